import type { Theme } from '../plot/canvas/theme.ts';
import type { Frame } from '../plot/frame.ts';
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

/** Labels of the time axis in its own area; the unit stands at the right end. */
export function drawTimeLabels(context: Context, theme: Theme, axis: TimeAxis, frame: Frame): void {
  const middle = frame.top + frame.height / 2;
  const unit = context.measureText(axis.title).width;
  context.fillStyle = theme.colour('soft');
  context.textAlign = 'right';
  context.fillText(axis.title, frame.left + frame.width, middle);
  context.textAlign = 'center';
  axis.eachTick((fraction, text) => {
    const half = context.measureText(text).width / 2;
    const x = frame.left + fraction * frame.width;
    if (x - half > frame.left - theme.textSize && x + half < frame.left + frame.width - unit - theme.textSize)
      context.fillText(text, x, middle);
  });
}

/** The hair line, a mark wherever it crosses a line, and its time on the axis. */
export function drawCursor(
  context: Context,
  theme: Theme,
  rows: readonly Row[],
  axisFrame: Frame,
  at: { column: number; fraction: number; moment: string },
): void {
  const { left, width } = axisFrame;
  const x = left + at.fraction * width;
  context.fillStyle = theme.colour('ink');
  for (const { frame } of rows) context.fillRect(Math.round(x), frame.top, 1, frame.height);
  for (const row of rows) row.drawMarks(context, theme, at.column, x);

  const half = context.measureText(at.moment).width / 2 + theme.textSize / 2;
  const middle = Math.min(Math.max(x, left + half), left + width - half);
  context.fillStyle = theme.colour('accent');
  context.fillRect(middle - half, axisFrame.top, 2 * half, axisFrame.height);
  context.fillStyle = theme.colour('panel');
  context.textAlign = 'center';
  context.fillText(at.moment, middle, axisFrame.top + axisFrame.height / 2);
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
