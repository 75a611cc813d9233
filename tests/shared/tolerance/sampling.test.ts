import { describe, expect, it } from 'vitest';
import { latinHypercube } from '../../../shared/tolerance/sampling/latinHypercube.ts';
import { cutNormal, normalShare } from '../../../shared/tolerance/sampling/normal.ts';
import { MAX_DIMENSIONS, sobolPoints } from '../../../shared/tolerance/sampling/sobol.ts';

/** scipy.stats.qmc.Sobol(d=20, scramble=False) of SciPy 1.17, which has the direction numbers of Joe and Kuo. */
const SCIPY: readonly (readonly [index: number, point: readonly number[]])[] = [
  [
    3,
    [
      0.25, 0.75, 0.75, 0.75, 0.25, 0.25, 0.75, 0.25, 0.25, 0.25, 0.25, 0.25, 0.75, 0.75, 0.25, 0.75, 0.25,
      0.75, 0.25, 0.75,
    ],
  ],
  [
    100,
    [
      0.4140625, 0.2578125, 0.7734375, 0.7265625, 0.8828125, 0.7421875, 0.0234375, 0.4765625, 0.6328125,
      0.6953125, 0.4609375, 0.6796875, 0.4765625, 0.8515625, 0.3203125, 0.4921875, 0.6796875, 0.7421875,
      0.8359375, 0.3359375,
    ],
  ],
  [
    2025,
    [
      0.71923828125, 0.97119140625, 0.46240234375, 0.31982421875, 0.28662109375, 0.68896484375, 0.71142578125,
      0.93798828125, 0.69580078125, 0.22705078125, 0.27978515625, 0.16650390625, 0.11572265625, 0.70654296875,
      0.52001953125, 0.02197265625, 0.88525390625, 0.91748046875, 0.95361328125, 0.38037109375,
    ],
  ],
];

describe('Sobol points', () => {
  it.each(SCIPY)('number %i is that of a general library, in all dimensions', (index, point) => {
    const ours = sobolPoints(MAX_DIMENSIONS, 0)(index);
    // Ours stand in the middle of the smallest cell, so that none is 0.
    expect([...ours].map((x) => x - 2 ** -33)).toEqual(point);
  });

  it.each([1, 77])('keep one point in each of 64 equal intervals of every dimension with seed %i', (seed) => {
    const point = sobolPoints(MAX_DIMENSIONS, seed);
    const points = Array.from({ length: 64 }, (_, k) => point(64 + k));
    for (let j = 0; j < MAX_DIMENSIONS; j++) {
      const cells = new Set(points.map((each) => Math.floor(64 * (each[j] ?? Number.NaN))));
      expect(cells.size).toBe(64);
    }
  });

  it('differ with the seed, and are the same again with the same', () => {
    expect(sobolPoints(3, 5)(9)).toEqual(sobolPoints(3, 5)(9));
    expect(sobolPoints(3, 5)(9)).not.toEqual(sobolPoints(3, 6)(9));
  });
});

it('a Latin hypercube has one point in each layer of each dimension, and the same ones again', () => {
  const point = latinHypercube(3, 4, 50);
  for (const j of [0, 1, 2]) {
    const layers = Array.from({ length: 50 }, (_, k) => Math.floor(50 * (point(k)[j] ?? Number.NaN)));
    expect(layers.toSorted((a, b) => a - b)).toEqual([...layers.keys()]);
    expect(layers).not.toEqual([...layers.keys()]);
  }
  expect(latinHypercube(3, 4, 50)(17)).toEqual(point(17));
});

/** scipy.stats.truncnorm.ppf of SciPy 1.17. */
it.each([
  [0.01, 3, -2.2793578771038914],
  [0.25, 2, -0.639111910871273],
  [0.9, 3, 1.2754222234675787],
  [0.999, 6, 3.0902320137449784],
  [0.5, 1, 0],
])('below a normal distribution at %f, cut off at %f σ, lies %f', (u, cut, x) => {
  expect(cutNormal(u, cut)).toBeCloseTo(x, 10);
});

it('the share of a normal distribution within ±1, 2 and 3 σ is that of every table', () => {
  expect(2 * normalShare(1)).toBeCloseTo(0.682689492137, 12);
  expect(2 * normalShare(2)).toBeCloseTo(0.954499736104, 12);
  expect(2 * normalShare(3)).toBeCloseTo(0.997300203937, 12);
  expect(cutNormal(0, 3)).toBeCloseTo(-3, 12);
  expect(cutNormal(1, 3)).toBeCloseTo(3, 12);
});
