import { describe, expect, it } from 'vitest';
import { latinHypercube } from '../../../shared/tolerance/sampling/latinHypercube.ts';
import { sobolPoints } from '../../../shared/tolerance/sampling/sobol.ts';
import { wilson } from '../../../shared/tolerance/wilson.ts';
import { ranks } from '../../../workers/tolerance/ranks.ts';
import { dependence } from '../../../workers/tolerance/sensitivity.ts';

const POINTS = 10_000;

/** Inputs from −π to π. */
function inputs(point: (index: number) => Float64Array): Float64Array[] {
  const points = Array.from({ length: POINTS }, (_, k) => point(k));
  return [0, 1, 2].map((j) =>
    Float64Array.from(points, (each) => Math.PI * (2 * (each[j] ?? Number.NaN) - 1)),
  );
}

/**
 * Ishigami, Homma, An importance quantification technique in uncertainty analysis for computer models, 1990, with a = 7 and
 * b = 0.1: S = 0.3139, 0.4424, 0 (Saltelli et al., Sensitivity Analysis, 2000; Sobol', Levitan 1999).
 */
describe.each([
  ['Sobol points', sobolPoints(3, 11)],
  ['a Latin hypercube', latinHypercube(3, 11, POINTS)],
])('the first-order indices of the Ishigami function from %s', (_, point) => {
  const [x1, x2, x3] = inputs(point) as [Float64Array, Float64Array, Float64Array];
  const y = x1.map(
    (x, k) => Math.sin(x) + 7 * Math.sin(x2[k] ?? 0) ** 2 + 0.1 * (x3[k] ?? 0) ** 4 * Math.sin(x),
  );
  const { shares, noise, slopes } = dependence([x1, x2, x3], y);

  it('are those that are published', () => {
    expect(Math.abs((shares[0] ?? 0) - 0.3139)).toBeLessThan(0.01);
    expect(Math.abs((shares[1] ?? 0) - 0.4424)).toBeLessThan(0.01);
    expect(shares[2]).toBeLessThan(noise);
  });

  it('see what a rank regression cannot see, because it neither rises nor falls', () => {
    expect(slopes[0]).toBeGreaterThan(0.3);
    expect(Math.abs(slopes[1] ?? 1)).toBeLessThan(0.05);
  });
});

it('of a sum of two inputs the shares are as their squares, the slopes as the inputs, and nothing is left over', () => {
  const [x1, x2, x3] = inputs(sobolPoints(3, 5)) as [Float64Array, Float64Array, Float64Array];
  const found = dependence(
    [x1, x2, x3],
    x1.map((x, k) => 2 * x - (x2[k] ?? 0)),
  );
  expect(found.shares[0]).toBeCloseTo(0.8, 2);
  expect(found.shares[1]).toBeCloseTo(0.2, 2);
  expect(found.shares[2]).toBeLessThan(found.noise);
  expect(found.slopes[0]).toBeGreaterThan(0.85);
  expect(found.slopes[1]).toBeLessThan(-0.4);
  expect(found.explained).toBeGreaterThan(0.97);
});

it('of a constant nothing depends on anything', () => {
  const x = Float64Array.from({ length: 200 }, (_, k) => k);
  expect(
    dependence(
      [x],
      x.map(() => 3),
    ),
  ).toMatchObject({ shares: [0], explained: 0 });
});

it('ranks share what is equal', () => {
  expect([...ranks(Float64Array.of(5, 1, 5, 3))]).toEqual([2.5, 0, 2.5, 1]);
});

/** R. G. Newcombe, Two-sided confidence intervals for the single proportion, Statistics in Medicine 17 (1998), table I, method 3. */
it.each([
  [81, 263, 0.2553, 0.3662],
  [15, 148, 0.0624, 0.1605],
  [0, 20, 0, 0.1611],
  [1, 29, 0.0061, 0.1718],
])('the 95 %% interval of %i in %i is the published one', (count, n, low, high) => {
  const found = wilson(count, n);
  expect(found.low).toBeCloseTo(low, 4);
  expect(found.high).toBeCloseTo(high, 4);
});

it('all of 29 good ones leave room for some that are not, and none beyond all', () => {
  expect(wilson(29, 29)).toMatchObject({ share: 1, high: 1 });
  expect(wilson(29, 29).low).toBeCloseTo(1 - wilson(0, 29).high, 12);
});
