import { at } from '../../shared/core/at.ts';

type Numbers = readonly number[] | Float64Array;

/** NaN for an empty list. */
export function mean(values: Numbers): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}

/** Σ (x − about)² */
export function sumOfSquares(values: Numbers, about = 0): number {
  let sum = 0;
  for (const value of values) sum += (value - about) ** 2;
  return sum;
}

/** Of a sample, with n − 1. */
export function variance(values: Numbers): number {
  return sumOfSquares(values, mean(values)) / (values.length - 1);
}

/** Of a sample, with n − 1. */
export function standardDeviation(values: Numbers): number {
  return Math.sqrt(variance(values));
}

/** Root mean square of what is not NaN; 0 where there is nothing. */
export function rms(values: Numbers): number {
  let [sum, count] = [0, 0];
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    sum += value * value;
    count++;
  }
  return count > 0 ? Math.sqrt(sum / count) : 0;
}

/** Largest magnitude of what is not NaN; 0 where there is nothing. */
export function largestMagnitude(values: Numbers): number {
  let largest = 0;
  for (const value of values) if (Math.abs(value) > largest) largest = Math.abs(value);
  return largest;
}

/** Largest less smallest value of what is not NaN; −∞ where there is nothing. */
export function range(values: Numbers): number {
  let [min, max] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value < min) min = value;
    if (value > max) max = value;
  }
  return max - min;
}

/**
 * The upper of the two in the middle where their count is even.
 *
 * @throws RangeError for an empty list
 */
export function median(values: Numbers): number {
  return at(Float64Array.from(values).sort(), values.length >> 1);
}
