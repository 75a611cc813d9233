import { valueAt } from '../../../shared/core/at.ts';
import type { ComplexArray } from '../../math/complexArray.ts';
import { paddedLength, transformOf } from '../../math/fourier.ts';
import { mean } from '../../math/statistics.ts';

/** Share of the record over which each end is faded in or out. */
const FADE = 0.05;
/** Number of lines on each side over which powers are averaged. */
const NEIGHBOURS = 6;

/** Spectral lines of a cause and its effect. */
export interface Lines {
  /** Hz, evenly spaced. */
  readonly frequency: Float64Array;
  /** How many lines share the noise of one, because zeros follow the record. */
  readonly overlap: number;
  readonly cause: ComplexArray;
  readonly effect: ComplexArray;
}

/**
 * Spectra of the longest stretch of two records without a gap, less their means, faded at both ends
 * to avoid leakage (Bendat, Piersol, Random Data, 4th ed. 2010, 11.5.2), and followed by zeros to a
 * power of two.
 */
export function linesOf(cause: Float64Array, effect: Float64Array, period: number): Lines {
  const { from, to } = longestStretch(cause, effect);
  const size = paddedLength(to - from);
  const spectrum = (record: Float64Array) =>
    transformOf(faded(record.subarray(from, to)), size).slice(0, size / 2);
  return {
    frequency: Float64Array.from({ length: size / 2 }, (_, k) => k / (size * period)),
    overlap: size / (to - from),
    cause: spectrum(cause),
    effect: spectrum(effect),
  };
}

/** Less its mean, and faded in and out. */
function faded(record: Float64Array): Float64Array {
  const middle = mean(record);
  const edge = Math.ceil(FADE * record.length);
  return record.map((value, k) => {
    const inside = Math.min(k, record.length - 1 - k) + 0.5;
    return (value - middle) * (inside < edge ? Math.sin((Math.PI / 2) * (inside / edge)) ** 2 : 1);
  });
}

/** The lines between two frequencies, Hz. */
export function between({ frequency, overlap, cause, effect }: Lines, low: number, high: number): Lines {
  const from = frequency.findIndex((f) => f >= low);
  const past = frequency.findIndex((f) => f > high);
  const to = past < 0 ? frequency.length : past;
  return {
    frequency: frequency.slice(from, to),
    overlap,
    cause: cause.slice(from, to),
    effect: effect.slice(from, to),
  };
}

/** Mean of each value and its neighbours. */
export function smoothed(values: Float64Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  let sum = 0;
  for (const [k, value] of values.entries()) {
    sum += value;
    sums[k + 1] = sum;
  }
  return values.map((_, k) => {
    const from = Math.max(0, k - NEIGHBOURS);
    const to = Math.min(values.length, k + NEIGHBOURS + 1);
    return (valueAt(sums, to) - valueAt(sums, from)) / (to - from);
  });
}

/** First row and the row after the last. */
function longestStretch(a: Float64Array, b: Float64Array): { from: number; to: number } {
  let best = { from: 0, to: 0 };
  for (let from = 0, k = 0; k <= a.length; k++) {
    if (k < a.length && !Number.isNaN(valueAt(a, k) + valueAt(b, k))) continue;
    if (k - from > best.to - best.from) best = { from, to: k };
    from = k + 1;
  }
  return best;
}
