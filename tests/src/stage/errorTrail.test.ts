import { describe, expect, it } from 'vitest';
import { ErrorTrail } from '../../../src/stage/lens/errorTrail.ts';

const contents = (trail: ErrorTrail, now: number) => {
  const seen: [number, number][] = [];
  trail.each(now, (age, error) => seen.push([Number(age.toFixed(6)), error]));
  return seen;
};

describe('the afterglow of the error', () => {
  it('runs from the newest sample back over its span and no further', () => {
    const trail = new ErrorTrail(1, 100);
    for (let i = 0; i <= 30; i++) trail.push(i * 0.1, i);
    const seen = contents(trail, 3);
    expect(seen[0]).toEqual([0, 30]);
    expect(seen.length).toBeGreaterThanOrEqual(10);
    expect(Math.max(...seen.map(([age]) => age))).toBeLessThanOrEqual(1);
  });

  it('holds the whole span however often it is fed', () => {
    const trail = new ErrorTrail(1, 50);
    for (let t = 0; t < 5; t += 1e-4) trail.push(t, 1);
    const ages = contents(trail, 5).map(([age]) => age);
    expect(Math.max(...ages)).toBeGreaterThan(0.9);
  });

  it('starts anew when time runs backwards: another run', () => {
    const trail = new ErrorTrail(1, 100);
    trail.push(10, 5);
    trail.push(0, 1);
    expect(contents(trail, 0)).toEqual([[0, 1]]);
  });
});
