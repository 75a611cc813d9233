import { valueAt } from '../../../shared/core/at.ts';
import type { Scale } from '../scale.ts';

/** A gap of a dashed line never swallows a column taller than this, CSS pixels: a spike shows even between two dashes. */
const TALL = 3;
/** A line may leave its frame by this much, CSS pixels, before it is held there. */
const BEYOND = 9;

/** How values and columns become pixels in one row. */
export interface Mapping {
  readonly left: number;
  readonly columnWidth: number;
  readonly y: Scale;
}

/** Minimum and maximum of one channel per column, and the number of the first column counted from time zero. */
export interface Columns {
  readonly lows: Float64Array;
  readonly highs: Float64Array;
  readonly count: number;
  readonly firstColumn: number;
}

/** The part of a canvas or of a path that an outline is added to. */
export type Outline = Pick<CanvasPath, 'moveTo' | 'lineTo'>;

/**
 * Adds the area between minima and maxima to the path, as broad as a line of `width` where they meet. Neighbouring
 * columns are joined, missing ones leave a gap. Filled, it costs far less than a stroked line of as many points.
 */
export function stripPath(
  outline: Outline,
  columns: Columns,
  map: Mapping,
  dash: readonly number[],
  width: number,
): void {
  const { lows, highs, count, firstColumn } = columns;
  const tall = TALL / Math.abs(pixelsPerUnit(map.y));
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
    piecePath(outline, columns, map, c, end, width / 2);
    c = end;
  }
}

/**
 * The columns from `start` to before `end` as one area: along the maxima, back along the minima. Filling closes it; a
 * closePath() here would cost a look at the whole path each time.
 */
function piecePath(
  outline: Outline,
  { lows, highs }: Columns,
  { left, columnWidth, y }: Mapping,
  start: number,
  end: number,
  half: number,
): void {
  const perUnit = pixelsPerUnit(y);
  const [top, foot] = [Math.min(y.start, y.end) - BEYOND, Math.max(y.start, y.end) + BEYOND];
  const pixel = (value: number) => Math.min(Math.max(y.start + (value - y.from) * perUnit, top), foot);
  const low = (c: number) => valueAt(lows, c);
  const high = (c: number) => valueAt(highs, c);
  const centre = (c: number) => left + (c + 0.5) * columnWidth;
  // A column reaches at least to its predecessor, so a jump is drawn as a jump.
  const upper = (c: number) => pixel(c > start ? Math.max(high(c), low(c - 1)) : high(c)) - half;
  const lower = (c: number) => pixel(c > start ? Math.min(low(c), high(c - 1)) : low(c)) + half;

  outline.moveTo(left + start * columnWidth, upper(start));
  for (let c = start; c < end; c++) outline.lineTo(centre(c), upper(c));
  outline.lineTo(left + end * columnWidth, upper(end - 1));
  outline.lineTo(left + end * columnWidth, lower(end - 1));
  for (let c = end - 1; c >= start; c--) outline.lineTo(centre(c), lower(c));
  outline.lineTo(left + start * columnWidth, lower(start));
}

function pixelsPerUnit({ from, to, start, end }: Scale): number {
  return (end - start) / (to - from);
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
