import { Vector3 } from 'three';
import { expect, it } from 'vitest';
import { Flight } from '../../../src/stage/flight.ts';

const pose = (position: [number, number, number], target: [number, number, number] = [0, 0, 0]) => ({
  position: new Vector3(...position),
  target: new Vector3(...target),
});

it('goes from one view to another and arrives there exactly', () => {
  const [from, to, camera] = [pose([1, 1, 1]), pose([-2, 1, 3], [0.5, 0, 0]), pose([0, 0, 0])];
  const flight = new Flight(from, to, 1000);
  expect(flight.at(1000, camera)).toBe(false);
  expect(camera.position.distanceTo(from.position)).toBeLessThan(1e-9);
  expect(camera.target.distanceTo(from.target)).toBeLessThan(1e-9);
  expect(flight.at(1e5, camera)).toBe(true);
  expect(camera.position.distanceTo(to.position)).toBe(0);
  expect(camera.target.distanceTo(to.target)).toBe(0);
});

it('keeps its distance on the way around, and takes the shorter way', () => {
  // Behind the machine from either side of it: 40 degrees, not 320.
  const [a, b] = [(170 * Math.PI) / 180, (-150 * Math.PI) / 180];
  const at = (angle: number) => pose([Math.sin(angle), 0, Math.cos(angle)]);
  const [flight, camera] = [new Flight(at(a), at(b), 0), pose([0, 0, 0])];
  for (let time = 0; time <= 700; time += 50) {
    flight.at(time, camera);
    expect(camera.position.length()).toBeCloseTo(1, 9);
    expect(camera.position.z).toBeLessThan(Math.cos((150 * Math.PI) / 180) + 1e-9);
  }
});
