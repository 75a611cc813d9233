/** A break in a line never swallows a column taller than this, CSS pixels: a spike shows even between two dashes. */
const TALL = 3;

/** How values and columns become pixels in one row. */
export interface Mapping {
  readonly left: number;
  readonly columnWidth: number;
  readonly top: number;
  readonly height: number;
  /** Value at the lower and upper edge. */
  readonly low: number;
  readonly high: number;
}

/** The same place for values of the opposite sign. */
export function mirrored(map: Mapping): Mapping {
  return { ...map, low: -map.low, high: -map.high };
}

/** Minimum and maximum of one channel per column, and the number of the first column counted from time zero. */
export interface Columns {
  readonly lows: Float64Array;
  readonly highs: Float64Array;
  readonly count: number;
  readonly firstColumn: number;
}

/**
 * Adds the area between minima and maxima to the path, as broad as a line of `width` where they meet. Neighbouring
 * columns are joined, missing ones leave a gap. Filled, it costs far less than a stroked line of as many points.
 */
export function stripPath(
  context: CanvasRenderingContext2D,
  columns: Columns,
  map: Mapping,
  dash: readonly number[],
  width: number,
): void {
  const perUnit = map.height / (map.high - map.low);
  const tall = TALL / Math.abs(perUnit);
  const period = dash.reduce((sum, length) => sum + length, 0);
  const drawn = (c: number) =>
    period === 0 ||
    isOn(dash, (columns.firstColumn + c) % period) ||
    columns.highs[c]! - columns.lows[c]! > tall;

  for (let c = 0; c < columns.count; ) {
    if (Number.isNaN(columns.lows[c]!) || !drawn(c)) {
      c++;
      continue;
    }
    let end = c + 1;
    while (end < columns.count && !Number.isNaN(columns.lows[end]!) && drawn(end)) end++;
    piecePath(context, columns, map, perUnit, c, end, width / 2);
    c = end;
  }
}

/**
 * The columns from `start` to before `end` as one area: along the maxima, back along the minima. Filling closes it; a
 * closePath() here would cost a look at the whole path each time.
 */
function piecePath(
  context: CanvasRenderingContext2D,
  { lows, highs }: Columns,
  { left, columnWidth, top, height, high }: Mapping,
  perUnit: number,
  start: number,
  end: number,
  half: number,
): void {
  const pixel = (value: number) =>
    Math.min(Math.max(top + (high - value) * perUnit, top - 9), top + height + 9);
  const centre = (c: number) => left + (c + 0.5) * columnWidth;
  // A column reaches at least to its predecessor, so a jump is drawn as a jump.
  const upper = (c: number) => pixel(c > start ? Math.max(highs[c]!, lows[c - 1]!) : highs[c]!) - half;
  const lower = (c: number) => pixel(c > start ? Math.min(lows[c]!, highs[c - 1]!) : lows[c]!) + half;

  context.moveTo(left + start * columnWidth, upper(start));
  for (let c = start; c < end; c++) context.lineTo(centre(c), upper(c));
  context.lineTo(left + end * columnWidth, upper(end - 1));
  context.lineTo(left + end * columnWidth, lower(end - 1));
  for (let c = end - 1; c >= start; c--) context.lineTo(centre(c), lower(c));
  context.lineTo(left + start * columnWidth, lower(start));
}

/** Whether a place in the pattern falls on a dash, not on a break. */
function isOn(dash: readonly number[], place: number): boolean {
  let on = true;
  for (const length of dash) {
    if (place < length) return on;
    place -= length;
    on = !on;
  }
  return on;
}
