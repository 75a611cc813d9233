import { describe, expect, it } from 'vitest';
import {
  largestMagnitude,
  mean,
  median,
  range,
  rms,
  standardDeviation,
  sumOfSquares,
  variance,
} from '../../../workers/math/statistics.ts';

/*
 * NumAcc2 of the Statistical Reference Datasets of the National Institute of Standards and Technology
 * (www.itl.nist.gov/div898/strd, from memory): 1.2, then 1.1 and 1.3 five hundred times; mean 1.2 and standard
 * deviation 0.1 exactly.
 */
const NUM_ACC_2 = [1.2, ...Array.from({ length: 1000 }, (_, k) => (k % 2 === 0 ? 1.1 : 1.3))];

describe('statistics', () => {
  it('meet certified values', () => {
    expect(mean(NUM_ACC_2)).toBeCloseTo(1.2, 12);
    expect(standardDeviation(NUM_ACC_2)).toBeCloseTo(0.1, 12);
    expect(variance(Float64Array.from(NUM_ACC_2))).toBeCloseTo(0.01, 13);
  });

  it('sum squares about any value', () => {
    expect(sumOfSquares([1, 2, 3])).toBe(14);
    expect(sumOfSquares([1, 2, 3], 2)).toBe(2);
  });

  it('pass over what is missing', () => {
    const gappy = Float64Array.of(3, Number.NaN, -4);
    expect(rms(gappy)).toBe(Math.sqrt(12.5));
    expect(largestMagnitude(gappy)).toBe(4);
    expect(range(gappy)).toBe(7);
    expect(rms([])).toBe(0);
    expect(largestMagnitude([Number.NaN])).toBe(0);
  });

  it('take the upper of two middle values, and order numbers as numbers', () => {
    const values = [10, 9, 100];
    expect(median(values)).toBe(10);
    expect(median([4, 1, 3, 2])).toBe(3);
    expect(values).toEqual([10, 9, 100]);
    expect(() => median([])).toThrow(RangeError);
  });
});
