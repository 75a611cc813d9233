import type { Area } from '../charts/plot.ts';
import type { Theme } from '../charts/theme.ts';
import { tickRange } from '../charts/ticks.ts';

/** One line of a plot over frequency. `value(k)` belongs to the k-th frequency. */
export interface Curve {
  readonly frequency: Float64Array;
  value(k: number): number;
  readonly colour: string;
  readonly dash: readonly number[];
  /** Faint: a pinned loop. */
  readonly ghost: boolean;
}

export interface FrequencyRange {
  readonly low: number;
  readonly high: number;
}

export interface ValueRange {
  readonly low: number;
  readonly high: number;
  readonly step: number;
  text(value: number): string;
}

const GHOST = 0.4;

/** Place of a frequency (Hz) on the logarithmic axis of an area, CSS pixels. */
export function xOf(area: Area, { low, high }: FrequencyRange, frequency: number): number {
  return area.left + (area.width * Math.log(frequency / low)) / Math.log(high / low);
}

/** Frequency (Hz) at a place on the axis. */
export function frequencyAt(area: Area, { low, high }: FrequencyRange, x: number): number {
  return low * (high / low) ** ((x - area.left) / area.width);
}

export function yOf(area: Area, { low, high }: ValueRange, value: number): number {
  return area.top + (area.height * (high - value)) / (high - low);
}

/** A range of whole steps that holds the curves between two frequencies, inside given bounds. */
export function rangeOf(
  curves: readonly Curve[],
  range: FrequencyRange,
  bounds: readonly [low: number, high: number],
  step: number,
  text: (value: number) => string,
): ValueRange {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { frequency, value } of curves) {
    for (let k = 0; k < frequency.length; k++) {
      if (frequency[k]! < range.low || frequency[k]! > range.high) continue;
      low = Math.min(low, value(k));
      high = Math.max(high, value(k));
    }
  }
  low = Math.max(low, bounds[0]);
  high = Math.min(high, bounds[1]);
  if (!(high > low)) [low, high] = bounds;
  return { low: Math.floor(low / step) * step, high: Math.ceil(high / step) * step, step, text };
}

/** Grid, labels, title and curves of one plot. The frequencies are written below only where there is room for them. */
export function drawFrequencyPlot(
  context: CanvasRenderingContext2D,
  theme: Theme,
  area: Area,
  title: string,
  range: FrequencyRange,
  values: ValueRange,
  curves: readonly Curve[],
  withFrequencies: boolean,
): void {
  context.fillStyle = theme.plot;
  context.fillRect(area.left, area.top, area.width, area.height);
  drawGrid(context, theme, area, range, values, withFrequencies);
  context.save();
  context.beginPath();
  context.rect(area.left, area.top, area.width, area.height);
  context.clip();
  for (const curve of curves) drawCurve(context, area, range, values, curve);
  context.restore();
  context.textAlign = 'left';
  context.textBaseline = 'top';
  context.lineWidth = 4;
  context.strokeStyle = theme.plot;
  context.font = `600 ${theme.font}`;
  context.strokeText(title, area.left + 5, area.top + 3);
  context.fillStyle = theme.ink;
  context.fillText(title, area.left + 5, area.top + 3);
}

function drawGrid(
  context: CanvasRenderingContext2D,
  theme: Theme,
  area: Area,
  range: FrequencyRange,
  values: ValueRange,
  withFrequencies: boolean,
): void {
  context.font = theme.font;
  context.fillStyle = theme.soft;
  context.lineWidth = 1;
  const [first, last] = tickRange(values.low, values.high, values.step);
  context.textAlign = 'right';
  context.textBaseline = 'middle';
  for (let k = first; k <= last; k++) {
    const y = Math.round(yOf(area, values, k * values.step)) + 0.5;
    context.strokeStyle = k === 0 ? theme.strong : theme.line;
    stroke(context, area.left, y, area.left + area.width, y);
    const inside = Math.min(
      Math.max(y, area.top + theme.textSize / 2),
      area.top + area.height - theme.textSize / 2,
    );
    context.fillText(values.text(k * values.step), area.left - 5, inside);
  }
  context.textAlign = 'center';
  context.textBaseline = 'top';
  context.strokeStyle = theme.line;
  for (let decade = 10 ** Math.ceil(Math.log10(range.low)); decade <= range.high; decade *= 10) {
    const x = Math.round(xOf(area, range, decade)) + 0.5;
    stroke(context, x, area.top, x, area.top + area.height);
    if (withFrequencies) {
      const words = decade >= 1000 ? `${decade / 1000} kHz` : `${decade} Hz`;
      context.fillText(words, x, area.top + area.height + 4);
    }
  }
}

function drawCurve(
  context: CanvasRenderingContext2D,
  area: Area,
  range: FrequencyRange,
  values: ValueRange,
  { frequency, value, colour, dash, ghost }: Curve,
): void {
  context.strokeStyle = colour;
  context.globalAlpha = ghost ? GHOST : 1;
  context.lineWidth = ghost ? 1.5 : 2;
  context.setLineDash([...dash]);
  context.beginPath();
  for (let k = 0; k < frequency.length; k++) {
    if (frequency[k]! < range.low) continue;
    const y = yOf(area, values, value(k));
    context.lineTo(xOf(area, range, frequency[k]!), Math.min(Math.max(y, area.top - 1e4), area.top + 1e4));
  }
  context.stroke();
  context.setLineDash([]);
  context.globalAlpha = 1;
}

function stroke(context: CanvasRenderingContext2D, x0: number, y0: number, x1: number, y1: number): void {
  context.beginPath();
  context.moveTo(x0, y0);
  context.lineTo(x1, y1);
  context.stroke();
}
