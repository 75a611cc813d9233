import { stepAtLeast } from './ticks.ts';

type Values = ArrayLike<number> & Iterable<number>;

/** Smallest and largest of all finite values; 0 and 1 without any. */
export function rangeOf(...values: readonly Values[]): readonly [low: number, high: number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const row of values) {
    for (const value of row) {
      if (!Number.isFinite(value)) continue;
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  }
  return low <= high ? [low, high] : [0, 1];
}

/** The largest finite value, but at least 0. */
export function greatestOf(...values: readonly Values[]): number {
  return rangeOf([0], ...values)[1];
}

export interface Range {
  readonly from: number;
  readonly to: number;
}

/** Both ends moved out to whole steps of the row 1, 2, 5, of which there are about `steps`. */
export function widened(low: number, high: number, steps = 5): Range {
  const span = high - low || Math.abs(high) || 1;
  const step = stepAtLeast(span / steps);
  return { from: Math.floor(low / step + 1e-9) * step, to: Math.ceil((low + span) / step - 1e-9) * step };
}

/** Decades below the upper end, where the lower one would be zero. */
const DECADES = 1e-3;

/** Both ends moved out to the row 1, 2, 5 times powers of ten. */
export function widenedLog(low: number, high: number): Range {
  const upper = high > 0 ? high : 1;
  const lower = low > 0 && low < upper ? low : DECADES * upper;
  return { from: 1 / stepAtLeast((1 - 1e-9) / lower), to: stepAtLeast(upper * (1 - 1e-9)) };
}
