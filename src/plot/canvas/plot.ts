import type { Unit } from '../../../shared/core/units.ts';
import { type Band, DASHES, type Trace } from '../../charts/rows.ts';
import { type Labelling, labelling, labelText, unitText } from '../labelling.ts';
import { type Mapping, mirrored, stripPath } from '../strip.ts';
import { tickRange } from '../ticks.ts';
import { type ScaleLimits, VerticalScale } from '../verticalScale.ts';
import type { ColumnBuffer } from './columnBuffer.ts';
import type { Theme } from './theme.ts';

/** Depth of the tint of a band, and of what is beyond a limit. */
const TINT = 0.13;
/** Lines keep this distance from the edges, CSS pixels. */
const INSET = 2;

/** Place on the canvas, CSS pixels. */
export interface Area {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Runs `draw` with everything outside an area cut off. */
export function clipped(
  context: CanvasRenderingContext2D,
  { left, top, width, height }: Area,
  draw: () => void,
): void {
  context.save();
  context.beginPath();
  context.rect(left, top, width, height);
  context.clip();
  draw();
  context.restore();
}

let endless = new Float64Array(0);

/** Draws on one area of the canvas, against one self-ranging vertical scale. */
export class Plot {
  area: Area = { left: 0, top: 0, width: 0, height: 0 };
  private readonly scale: VerticalScale;
  private labels: Labelling;

  constructor(
    private readonly unit: Unit,
    limits: ScaleLimits,
  ) {
    this.scale = new VerticalScale(limits);
    this.labels = labelling(this.scale.low, this.scale.high, this.scale.step, unit);
  }

  /** Fits the scale to the data range for text of `textSize`; whether it has changed. */
  fit(low: number, high: number, textSize: number): boolean {
    const changed = this.scale.fit(low, high, this.area.height, textSize);
    if (changed) this.labels = labelling(this.scale.low, this.scale.high, this.scale.step, this.unit);
    return changed;
  }

  /** What the values are counted in. */
  get unitText(): string {
    return unitText(this.labels, this.unit);
  }

  /** The range from `low` to `high` where the scale resolves it, else its middle to a tenth of the last digit. */
  valueText(low: number, high: number): string {
    const [from, to] = [labelText(low, this.labels), labelText(high, this.labels)];
    return from === to ? labelText((low + high) / 2, this.labels, 1) : `${from}…${to}`;
  }

  clip(context: CanvasRenderingContext2D): void {
    const { left, top, width, height } = this.area;
    context.beginPath();
    context.rect(left, top, width, height);
    context.clip();
  }

  drawGrid(context: CanvasRenderingContext2D, theme: Theme): void {
    const { left, width } = this.area;
    this.eachTick((value) => {
      context.fillStyle = value === 0 ? theme.strong : theme.line;
      context.fillRect(left, Math.round(this.pixel(value)), width, 1);
    });
  }

  drawLabels(context: CanvasRenderingContext2D, theme: Theme): void {
    const { left, top, height } = this.area;
    const half = theme.textSize * 0.6;
    context.fillStyle = theme.soft;
    context.textAlign = 'right';
    let above = Number.POSITIVE_INFINITY;
    this.eachTick((value) => {
      const y = Math.min(Math.max(this.pixel(value), top + half), top + height - half);
      if (y > above - theme.textSize) return;
      above = y;
      context.fillText(labelText(value, this.labels), left - 6, y);
    });
  }

  drawBand(context: CanvasRenderingContext2D, { low, high }: Band): void {
    const { left, width } = this.area;
    const upper = this.pixel(high);
    const lower = this.pixel(low);
    context.globalAlpha = TINT;
    context.fillRect(left, upper, width, lower - upper);
    context.globalAlpha = 1;
    context.fillRect(left, Math.round(upper), width, 1);
    context.fillRect(left, Math.round(lower), width, 1);
  }

  drawLine(context: CanvasRenderingContext2D, columns: ColumnBuffer, { dash, width }: Trace): void {
    context.beginPath();
    stripPath(context, columns, this.mapping(columns.count), DASHES[dash], width);
    context.fill();
  }

  /** A limit that holds to both sides of zero and may change with time: its edges, and a tint beyond them. */
  drawLimit(context: CanvasRenderingContext2D, columns: ColumnBuffer, { dash, width }: Trace): void {
    const map = this.mapping(columns.count);
    if (endless.length < columns.count) endless = new Float64Array(columns.count).fill(Infinity);
    const beyond = { lows: columns.lows, highs: endless, count: columns.count, firstColumn: 0 };
    context.globalAlpha = TINT;
    context.beginPath();
    stripPath(context, beyond, map, DASHES.solid, 0);
    stripPath(context, beyond, mirrored(map), DASHES.solid, 0);
    context.fill();
    context.globalAlpha = 1;
    context.beginPath();
    stripPath(context, columns, map, DASHES[dash], width);
    stripPath(context, columns, mirrored(map), DASHES[dash], width);
    context.fill();
  }

  /** A dot on a value in a column; none where the value is off the scale. */
  drawMark(context: CanvasRenderingContext2D, x: number, value: number): void {
    const y = this.pixel(value);
    if (!(y >= this.area.top && y <= this.area.top + this.area.height)) return;
    context.beginPath();
    context.arc(x, y, 3.5, 0, 2 * Math.PI);
    context.fill();
    context.stroke();
  }

  private mapping(count: number): Mapping {
    const { left, top, width, height } = this.area;
    return {
      left,
      columnWidth: width / count,
      top: top + INSET,
      height: height - 2 * INSET,
      low: this.scale.low,
      high: this.scale.high,
    };
  }

  private pixel(value: number): number {
    const { top, height } = this.area;
    const { low, high } = this.scale;
    return top + INSET + ((high - value) / (high - low)) * (height - 2 * INSET);
  }

  private eachTick(draw: (value: number) => void): void {
    const { low, high, step } = this.scale;
    const [first, last] = tickRange(low, high, step);
    for (let k = first; k <= last; k++) draw(k * step);
  }
}
