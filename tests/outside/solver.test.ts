import { describe, expect, it } from 'vitest';
import { at, present } from '../../shared/core/at.ts';
import { DivergedError } from '../../workers/solver/tickSolver.ts';
import { integrate } from './integrate.ts';

describe('published problems through the tick solver', () => {
  it('closes the Arenstorf orbit (Hairer, Nørsett, Wanner, Solving ODEs I, p. 129)', () => {
    const mu = 0.012277471;
    const orbit = ([x, y, vx, vy]: number[], d: number[]) => {
      const r1 = ((present(x) + mu) ** 2 + present(y) ** 2) ** 1.5;
      const r2 = ((present(x) - 1 + mu) ** 2 + present(y) ** 2) ** 1.5;
      d[0] = present(vx);
      d[1] = present(vy);
      d[2] =
        present(x) +
        2 * present(vy) -
        ((1 - mu) * (present(x) + mu)) / r1 -
        (mu * (present(x) - 1 + mu)) / r2;
      d[3] = present(y) - 2 * present(vx) - ((1 - mu) * present(y)) / r1 - (mu * present(y)) / r2;
    };
    const y = integrate(orbit, [0.994, 0, 0, -2.00158510637908], 17.06521656015796, 50, 1e-13);
    expect(y[0]).toBeCloseTo(0.994, 6);
    expect(y[1]).toBeCloseTo(0, 6);
  });

  it('reaches the Brusselator state (Hairer, Nørsett, Wanner I, sec. II.4; digits from memory)', () => {
    const reaction = ([u, v]: number[], d: number[]) => {
      d[0] = 1 + present(u) * present(u) * present(v) - 4 * present(u);
      d[1] = 3 * present(u) - present(u) * present(u) * present(v);
    };
    const y = integrate(reaction, [1.5, 3], 20, 200, 1e-12);
    expect(y[0]).toBeCloseTo(0.498637071268, 9);
    expect(y[1]).toBeCloseTo(4.59678034945, 9);
  });

  it('follows the Airy function to x = 1 (Abramowitz & Stegun 10.4)', () => {
    const airy = ([y, slope, x]: number[], d: number[]) => {
      d[0] = present(slope);
      d[1] = present(x) * present(y);
      d[2] = 1;
    };
    const y = integrate(airy, [0.3550280539, -0.2588194038, 0], 1, 100, 1e-12);
    expect(y[0]).toBeCloseTo(0.1352924163, 9);
    expect(y[1]).toBeCloseTo(-0.1591474413, 9);
  });

  it('follows the van der Pol oscillator, µ = 3 (SUNDIALS, CVODE direct demo, printed to 5e-5)', () => {
    const oscillator = ([x, v]: number[], d: number[]) => {
      d[0] = present(v);
      d[1] = 3 * (1 - present(x) * present(x)) * present(v) - present(x);
    };
    const y = integrate(oscillator, [2, 0], 1.3928388, 50, 1e-10);
    expect(Math.abs(at(y, 0) - 1.6801)).toBeLessThan(2e-4);
    expect(Math.abs(at(y, 1) + 0.291056)).toBeLessThan(2e-4);
  });

  it('takes a tighter tolerance as a smaller error', () => {
    const swing = ([x, v]: number[], d: number[]) => {
      d[0] = present(v);
      d[1] = -present(x);
    };
    const errorAt = (tolerance: number) =>
      Math.abs(at(integrate(swing, [1, 0], 20 * Math.PI, 7, tolerance), 0) - 1);
    expect(errorAt(1e-6)).toBeLessThan(1e-4);
    expect(errorAt(1e-10)).toBeLessThan(errorAt(1e-6) / 100);
  });

  it('says so when a solution runs away instead of returning NaN', () => {
    const explode = ([x]: number[], d: number[]) => {
      d[0] = present(x) * present(x);
    };
    expect(() => integrate(explode, [1], 2, 1, 1e-9)).toThrow(DivergedError);
  });
});
