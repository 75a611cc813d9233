import { valueAt } from '../../../shared/core/at.ts';
import type { Scale } from '../scale.ts';

/**
 * A gap of a dashed line never swallows a column taller than this, CSS pixels: a spike shows even
 * between two dashes.
 */
const TALL = 3;
/** A line may leave its frame by this much, CSS pixels, before it is held there. */
const BEYOND = 9;

/** A line that rises or falls by less than this, CSS pixels, goes on level: columns of one height then take two corners, not one each. */
const FLAT = 1 / 64;

/** How values and columns become pixels in one row. */
export interface Mapping {
  readonly left: number;
  readonly columnWidth: number;
  readonly y: Scale;
}

/**
 * Minimum and maximum of one channel per column, and the number of the first column counted from
 * time zero.
 */
export interface Columns {
  readonly lows: Float64Array;
  readonly highs: Float64Array;
  readonly count: number;
  readonly firstColumn: number;
}

/** The part of a canvas or of a path that an outline is added to. */
type Outline = Pick<CanvasPath, 'moveTo' | 'lineTo'>;

/**
 * Adds the area between minima and maxima to the path, as broad as a line of `width` where they
 * meet. Neighbouring columns are joined, missing ones leave a gap. Filled, it costs far less than a
 * stroked line of as many points.
 */
export function stripPath(
  outline: Outline,
  columns: Columns,
  map: Mapping,
  dash: readonly number[],
  width: number,
): void {
  const { lows, highs, count, firstColumn } = columns;
  const { y } = map;
  const perUnit = (y.end - y.start) / (y.to - y.from);
  const top = Math.min(y.start, y.end) - BEYOND;
  const foot = Math.max(y.start, y.end) + BEYOND;
  const pixel = (value: number) => Math.min(Math.max(y.start + (value - y.from) * perUnit, top), foot);
  const tall = TALL / Math.abs(perUnit);
  const period = dash.reduce((sum, length) => sum + length, 0);
  const isDrawn = (c: number) =>
    !Number.isNaN(lows[c]) &&
    (period === 0 || isOn(dash, (firstColumn + c) % period) || valueAt(highs, c) - valueAt(lows, c) > tall);

  for (let c = 0; c < count; ) {
    if (!isDrawn(c)) {
      c++;
      continue;
    }
    let end = c + 1;
    while (end < count && isDrawn(end)) end++;
    piecePath(outline, columns, map, pixel, c, end, width / 2);
    c = end;
  }
}

/**
 * The columns from `start` to before `end` as one area: along the maxima, back along the minima. A
 * column reaches at least to its predecessor, so a jump is drawn as a jump. Filling closes the
 * area; a closePath() here would cost a look at the whole path each time.
 */
function piecePath(
  outline: Outline,
  { lows, highs }: Columns,
  { left, columnWidth }: Mapping,
  pixel: (value: number) => number,
  start: number,
  end: number,
  half: number,
): void {
  const right = left + end * columnWidth;
  const middle = (c: number) => left + (c + 0.5) * columnWidth;
  let edge = pixel(valueAt(highs, start)) - half;
  outline.moveTo(left + start * columnWidth, edge);
  let corner = start - 1;
  for (let c = start + 1; c < end; c++) {
    const next = pixel(Math.max(valueAt(highs, c), valueAt(lows, c - 1))) - half;
    if (Math.abs(next - edge) < FLAT) continue;
    if (corner < c - 1) outline.lineTo(middle(c - 1), edge);
    outline.lineTo(middle(c), next);
    edge = next;
    corner = c;
  }
  outline.lineTo(right, edge);

  const below = (c: number) => {
    const before = c > start ? valueAt(highs, c - 1) : Number.POSITIVE_INFINITY;
    return pixel(Math.min(valueAt(lows, c), before)) + half;
  };
  edge = below(end - 1);
  outline.lineTo(right, edge);
  corner = end;
  for (let c = end - 2; c >= start; c--) {
    const next = below(c);
    if (Math.abs(next - edge) < FLAT) continue;
    if (corner > c + 1) outline.lineTo(middle(c + 1), edge);
    outline.lineTo(middle(c), next);
    edge = next;
    corner = c;
  }
  outline.lineTo(left + start * columnWidth, edge);
}

/** Whether a place in the pattern falls on a dash, not on a gap. */
function isOn(dash: readonly number[], place: number): boolean {
  let on = true;
  for (const length of dash) {
    if (place < length) return on;
    place -= length;
    on = !on;
  }
  return on;
}
