import type { Area } from '../plot/canvas/plot.ts';
import type { Theme } from '../plot/canvas/theme.ts';
import type { TimeAxis } from '../plot/canvas/timeAxis.ts';
import type { Row } from './row.ts';

type Context = CanvasRenderingContext2D;

/** The ground of one plot with vertical lines at the ticks of the time axis. */
export function drawGround(context: Context, theme: Theme, axis: TimeAxis, area: Area): void {
  context.fillStyle = theme.plot;
  context.fillRect(area.left, area.top, area.width, area.height);
  context.fillStyle = theme.line;
  axis.eachTick((fraction) => {
    context.fillRect(Math.round(area.left + fraction * area.width), area.top, 1, area.height);
  });
}

/** Labels of the time axis in its own area; the unit stands at the right end. */
export function drawTimeLabels(context: Context, theme: Theme, axis: TimeAxis, area: Area): void {
  const middle = area.top + area.height / 2;
  const unit = context.measureText(axis.title).width;
  context.fillStyle = theme.soft;
  context.textAlign = 'right';
  context.fillText(axis.title, area.left + area.width, middle);
  context.textAlign = 'center';
  axis.eachTick((fraction, text) => {
    const half = context.measureText(text).width / 2;
    const x = area.left + fraction * area.width;
    if (x - half > area.left - theme.textSize && x + half < area.left + area.width - unit - theme.textSize)
      context.fillText(text, x, middle);
  });
}

/** The hair line, a mark wherever it crosses a line, and its time on the axis. */
export function drawCursor(
  context: Context,
  theme: Theme,
  rows: readonly Row[],
  axisArea: Area,
  at: { column: number; fraction: number; moment: string },
): void {
  const { left, width } = axisArea;
  const x = left + at.fraction * width;
  context.fillStyle = theme.ink;
  for (const { area } of rows) context.fillRect(Math.round(x), area.top, 1, area.height);
  for (const row of rows) row.drawMarks(context, theme, at.column, x);

  const half = context.measureText(at.moment).width / 2 + theme.textSize / 2;
  const middle = Math.min(Math.max(x, left + half), left + width - half);
  context.fillStyle = theme.accent;
  context.fillRect(middle - half, axisArea.top, 2 * half, axisArea.height);
  context.fillStyle = theme.ground;
  context.textAlign = 'center';
  context.fillText(at.moment, middle, axisArea.top + axisArea.height / 2);
}

/** The window that is being dragged out, as fractions of the width. */
export function drawSelection(
  context: Context,
  theme: Theme,
  rows: readonly Row[],
  [a, b]: readonly [number, number],
): void {
  context.fillStyle = theme.accent;
  for (const { area } of rows) {
    const start = area.left + Math.min(a, b) * area.width;
    const length = Math.abs(b - a) * area.width;
    context.globalAlpha = 0.18;
    context.fillRect(start, area.top, length, area.height);
    context.globalAlpha = 1;
    context.fillRect(start, area.top, 1, area.height);
    context.fillRect(start + length, area.top, 1, area.height);
  }
}
