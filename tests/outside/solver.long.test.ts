import { expect, it } from 'vitest';
import { present } from '../../shared/core/at.ts';
import { integrate } from './integrate.ts';

it('agrees with the stiff van der Pol reference, ε = 1e-6, t = 2 (Mazzia & Magherini, Test Set for IVP Solvers)', () => {
  const stiff = ([x, v]: number[], d: number[]) => {
    d[0] = present(v);
    d[1] = ((1 - present(x) * present(x)) * present(v) - present(x)) / 1e-6;
  };
  const y = integrate(stiff, [2, 0], 2, 400_000, 1e-8);
  expect(y[0]).toBeCloseTo(1.70616773217, 7);
  expect(y[1]).toBeCloseTo(-0.892809701025, 6);
});
