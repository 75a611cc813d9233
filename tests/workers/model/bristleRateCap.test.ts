import { expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { parameterRow } from '../../../shared/core/parameters/table.ts';
import { BristleFriction } from '../../../workers/model/friction/bristles.ts';
import { TickSolver } from '../../../workers/solver/tickSolver.ts';

const STIFF = {
  coulomb: 60,
  breakaway: 110,
  stribeckSpeed: 1e-3,
  bristleDamping: 3e3,
  dampingFadeSpeed: 1e-3,
  viscous: 50,
};
/** Far above any rate that these bristles reach at this speed. */
const UNCAPPED = 1e12;
const SPEED = 3e-4;
const MASS = 20;
const STIFFNESS = MASS * (2 * Math.PI * 30) ** 2;
const DAMPING = 1.4 * MASS * 2 * Math.PI * 30;
const TICK = 1 / 16000;

/** A mass that a controller with integral action (30 Hz) draws over stiff bristles at 0.3 mm/s: its places tick by tick, m. */
function drawn(bristleStiffness: number, count: number, rateCap?: number): number[] {
  const friction = new BristleFriction();
  friction.set({ ...STIFF, bristleStiffness }, rateCap);
  const y = [0, 0, 0, 0, 0];
  const solver = new TickSolver(
    (_t, [x, v, z, integral, t], d) => {
      friction.evaluate(present(v), present(z));
      const error = SPEED * present(t) - present(x);
      const force = STIFFNESS * (error + 40 * present(integral)) + DAMPING * (SPEED - present(v));
      d[0] = present(v);
      d[1] = (force - friction.force) / MASS;
      d[2] = friction.deflectionRate;
      d[3] = error;
      d[4] = 1;
    },
    TICK,
    [0, 1e-9, 1e-9, 1e-9, 1e-9],
    [1e-13, 1e-11, 1e-14, 1e-14, 1e-9],
  );
  return Array.from({ length: count }, () => {
    solver.advance(y, y);
    return present(y[0]);
  });
}

/** How far the cap moves the path, m. */
function moved(bristleStiffness: number, count: number): number {
  const published = drawn(bristleStiffness, count, UNCAPPED);
  const apart = drawn(bristleStiffness, count).map((x, i) => Math.abs(x - present(published[i])));
  return Math.max(...apart);
}

it('the cap of the bristle rate moves the path of a stick-slip over stiff bristles by less than 0.5 nm', () => {
  expect(moved(1e8, 4800)).toBeLessThan(0.5e-9);
});

it('and over the stiffest that the table allows by less than 2 nm', () => {
  expect(parameterRow('bristleStiffness')).toMatchObject({ max: 1e9 });
  expect(moved(1e9, 2400)).toBeLessThan(2e-9);
});
