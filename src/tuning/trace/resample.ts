import { at, valueAt } from '../../../shared/core/at.ts';
import type { TraceGap } from '../../../shared/protocol/trace.ts';

/** A step of time this much longer than the others is a gap: one row lost is seen. Rounding may make a step longer by a digit. */
const GAP = 1.8;
/** A clock is told by so many steps that are exactly alike. */
const ALIKE = 0.9;
/** Steps longer than this many medians do not count in the mean. */
const FAR = 2.5;
/** Times that are off an even grid by less than this share of the period are on it. */
const EVEN = 1e-6;

/** How rows at given times come to lie on an even grid. */
interface Grid {
  readonly period: number;
  readonly start: number;
  readonly count: number;
  readonly gaps: readonly TraceGap[];
  readonly kind: 'as recorded' | 'time rounded' | 'interpolated';
  /** A series, one value a row, as it is on the grid: NaN in the gaps. */
  place(values: ArrayLike<number>): Float64Array<ArrayBuffer>;
}

/** First and last of rows without a gap between them. */
interface Range {
  readonly from: number;
  readonly to: number;
}

/** And the grid point nearest to the first. */
interface Piece extends Range {
  readonly at: number;
}

/**
 * The even grid of rising times (s): its period is the slope of time over rows. `digit` is the last digit the times are written
 * with (s): where rounding explains all unevenness, a clock has sampled and the rows are taken as even. Uneven rows are interpolated.
 */
export function gridOf(times: ArrayLike<number>, digit: number): Grid {
  const rows = times.length;
  const steps = Float64Array.from({ length: rows - 1 }, (_, k) => at(times, k + 1) - at(times, k));
  const usual = median(steps);
  const alike = steps.reduce((sum, step) => sum + (Math.abs(step - usual) <= EVEN * usual ? 1 : 0), 0);
  const rounding = alike > ALIKE * steps.length ? 0 : digit;
  const limit = GAP * meanWithout(steps, FAR * usual) + rounding;
  const start = at(times, 0);

  const ranges: Range[] = [];
  const gaps: TraceGap[] = [];
  for (let from = 0, k = 0; k < rows; k++) {
    const isGap = k + 1 < rows && valueAt(steps, k) > limit;
    if (isGap) gaps.push({ from: at(times, k), to: at(times, k + 1) });
    if (isGap || k + 1 === rows) {
      ranges.push({ from, to: k });
      from = k + 1;
    }
  }

  const period = periodOf(times, ranges);
  const pieces = ranges.map(
    (range): Piece => ({ ...range, at: Math.round((at(times, range.from) - start) / period) }),
  );
  const unevenness = pieces.reduce((max, piece) => Math.max(max, unevennessOf(times, piece, period)), 0);
  const even = unevenness <= EVEN * period;
  const kind = even ? 'as recorded' : unevenness <= digit ? 'time rounded' : 'interpolated';
  const last = at(pieces, pieces.length - 1);
  const count =
    kind === 'interpolated'
      ? Math.floor((at(times, rows - 1) - start) / period + EVEN) + 1
      : last.at + last.to - last.from + 1;

  const place = (values: ArrayLike<number>): Float64Array<ArrayBuffer> => {
    const out = new Float64Array(count).fill(Number.NaN);
    for (const piece of pieces) {
      if (kind === 'interpolated') interpolate(times, values, piece, start, period, out);
      else for (let k = piece.from; k <= piece.to; k++) out[piece.at + k - piece.from] = at(values, k);
    }
    return out;
  };
  return { period, start, count, gaps, kind, place };
}

/** Slope of the straight line through the times of each range, one slope for all: least squares, so that rounded times tell it finely. */
function periodOf(times: ArrayLike<number>, ranges: readonly Range[]): number {
  let [products, squares] = [0, 0];
  for (const { from, to } of ranges) {
    const middle = (from + to) / 2;
    for (let k = from; k <= to; k++) {
      products += (k - middle) * (at(times, k) - at(times, from));
      squares += (k - middle) ** 2;
    }
  }
  return products / squares;
}

/** Largest distance of the times of a piece from evenly spaced ones, less their mean, s. */
function unevennessOf(times: ArrayLike<number>, { from, to }: Piece, period: number): number {
  let [min, max] = [0, 0];
  for (let k = from; k <= to; k++) {
    const off = at(times, k) - at(times, from) - (k - from) * period;
    min = Math.min(min, off);
    max = Math.max(max, off);
  }
  return (max - min) / 2;
}

/**
 * Cubic through the four rows nearest round each grid point (Lagrange's formula); a piece of fewer rows gives a lower degree.
 * Exact for a cubic at any spacing; the error is of the fourth order in the step.
 */
function interpolate(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  { from, to }: Piece,
  start: number,
  period: number,
  out: Float64Array,
): void {
  let row = from;
  const first = Math.ceil((at(times, from) - start) / period - EVEN);
  for (let k = first; k < out.length; k++) {
    const time = start + k * period;
    if (time > at(times, to) + EVEN * period) return;
    while (row + 1 < to && at(times, row + 1) < time) row++;
    const near = Math.max(from, Math.min(row - 1, to - 3));
    const far = Math.min(to, near + 3);
    let sum = 0;
    for (let i = near; i <= far; i++) {
      let weight = 1;
      for (let j = near; j <= far; j++) {
        if (j !== i) weight *= (time - at(times, j)) / (at(times, i) - at(times, j));
      }
      sum += weight * at(values, i);
    }
    out[k] = sum;
  }
}

function median(values: Float64Array): number {
  return valueAt(values.slice().sort(), values.length >> 1);
}

function meanWithout(values: Float64Array, limit: number): number {
  let [sum, count] = [0, 0];
  for (const value of values) {
    if (value > limit) continue;
    sum += value;
    count++;
  }
  return sum / count;
}
