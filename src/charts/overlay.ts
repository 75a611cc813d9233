import type { Theme } from '../plot/canvas/theme.ts';
import { type Frame, rightOf } from '../plot/frame.ts';
import type { TimeAxis } from '../plot/strip/timeAxis.ts';
import type { Row } from './row.ts';

type Context = CanvasRenderingContext2D;

/** The ground of one plot with vertical lines at the ticks of the time axis. */
export function drawGround(context: Context, theme: Theme, axis: TimeAxis, frame: Frame): void {
  context.fillStyle = theme.colour('ground');
  context.fillRect(frame.left, frame.top, frame.width, frame.height);
  context.fillStyle = theme.colour('line');
  axis.eachTick((fraction) => {
    context.fillRect(Math.round(frame.left + fraction * frame.width), frame.top, 1, frame.height);
  });
}

/** The time at the cursor, in a box on the time axis. */
interface MomentBox {
  readonly text: string;
  readonly left: number;
  readonly width: number;
}

/** The box lies below the cursor, but inside the axis. */
export function momentBox(
  context: Context,
  theme: Theme,
  frame: Frame,
  fraction: number,
  text: string,
): MomentBox {
  const width = context.measureText(text).width + theme.textSize;
  const left = frame.left + fraction * frame.width - width / 2;
  return { text, width, left: Math.min(Math.max(left, frame.left), rightOf(frame) - width) };
}

/**
 * Labels of the time axis in its own area; the unit is at the right end, and the box leaves no
 * label half hidden.
 */
export function drawTimeLabels(
  context: Context,
  theme: Theme,
  axis: TimeAxis,
  frame: Frame,
  box: MomentBox | null,
): void {
  const middle = frame.top + frame.height / 2;
  const last = rightOf(frame) - context.measureText(axis.title).width - theme.textSize;
  const isFree = (left: number, right: number) =>
    left > frame.left - theme.textSize &&
    right < last &&
    (box === null || right < box.left || left > box.left + box.width);
  context.fillStyle = theme.colour('soft');
  context.textAlign = 'right';
  context.fillText(axis.title, rightOf(frame), middle);
  context.textAlign = 'center';
  axis.eachTick((fraction, text) => {
    const half = context.measureText(text).width / 2;
    const x = frame.left + fraction * frame.width;
    if (isFree(x - half, x + half)) context.fillText(text, x, middle);
  });
  if (!box) return;
  context.fillStyle = theme.colour('accent');
  context.fillRect(box.left, frame.top, box.width, frame.height);
  context.fillStyle = theme.colour('panel');
  context.fillText(box.text, box.left + box.width / 2, middle);
}

/** The hair line, and a mark wherever it crosses a line. */
export function drawCursor(
  context: Context,
  theme: Theme,
  rows: readonly Row[],
  { column, x }: { readonly column: number; readonly x: number },
): void {
  context.fillStyle = theme.colour('ink');
  for (const { frame } of rows) context.fillRect(Math.round(x), frame.top, 1, frame.height);
  for (const row of rows) row.drawMarks(context, theme, column, x);
}

/** The window that is being dragged out, as fractions of the width. */
export function drawSelection(
  context: Context,
  theme: Theme,
  rows: readonly Row[],
  [a, b]: readonly [number, number],
): void {
  context.fillStyle = theme.colour('accent');
  for (const { frame } of rows) {
    const start = frame.left + Math.min(a, b) * frame.width;
    const length = Math.abs(b - a) * frame.width;
    context.globalAlpha = 0.18;
    context.fillRect(start, frame.top, length, frame.height);
    context.globalAlpha = 1;
    context.fillRect(start, frame.top, 1, frame.height);
    context.fillRect(start + length, frame.top, 1, frame.height);
  }
}
