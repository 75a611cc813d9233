import type { Unit } from '../../../shared/core/units.ts';
import type { Theme } from '../canvas/theme.ts';
import { contains, type Frame, footOf, NO_FRAME } from '../frame.ts';
import { type Labelling, labelling, labelText, readingText, unitText } from '../labelling.ts';
import { DASHES } from '../pens.ts';
import { linearScale, mirrored, type Scale } from '../scale.ts';
import { tickRange } from '../ticks.ts';
import type { ColumnBuffer } from './columnBuffer.ts';
import { type Mapping, stripPath } from './stripPath.ts';
import type { Band, Trace } from './trace.ts';
import { type ScaleLimits, VerticalScale } from './verticalScale.ts';

/** Opacity of a band, and of what is beyond a limit. */
const TINT = 0.13;
/** Labels of ticks stand at least this far above each other, as a multiple of the text size: digits have no descenders. */
const LABEL_PITCH = 0.72;
/** Values are read to this share of the visible span. */
const READ_TO = 1e-3;
/** Lines keep this distance from the edges, CSS pixels. */
const INSET = 2;

type Context = CanvasRenderingContext2D;

let endless = new Float64Array(0);

/**
 * One strip chart on a canvas, against a vertical scale that follows its data. It is drawn at every
 * refresh of the display, so it draws columns at once and describes no marks.
 */
export class StripPlot {
  readonly #unit: Unit;
  readonly #range: VerticalScale;
  #frame = NO_FRAME;
  #y: Scale;
  #labels: Labelling;

  constructor(unit: Unit, limits: ScaleLimits) {
    this.#unit = unit;
    this.#range = new VerticalScale(limits);
    this.#y = this.#scale();
    this.#labels = this.#labelling();
  }

  get frame(): Frame {
    return this.#frame;
  }

  set frame(frame: Frame) {
    this.#frame = frame;
    this.#y = this.#scale();
  }

  /** Fits the scale to the data range for text of `textSize`; whether it has changed. */
  fit(low: number, high: number, textSize: number): boolean {
    const changed = this.#range.fit(low, high, this.#frame.height, textSize);
    if (changed) {
      this.#y = this.#scale();
      this.#labels = this.#labelling();
    }
    return changed;
  }

  /** Whether a value is on the scale. */
  shows(value: number): boolean {
    return value >= this.#range.low && value <= this.#range.high;
  }

  /** What the values are counted in. */
  get unitText(): string {
    return unitText(this.#labels, this.#unit);
  }

  /** The values of a column, with as many digits as the scale shows. */
  valueText(low: number, high: number): string {
    return readingText(low, high, this.#labels, this.#resolution);
  }

  /** From one value to another, signed, as finely as the scale shows them. */
  differenceText(from: number, to: number): string {
    const by = to - from;
    const text = readingText(by, by, { ...this.#labels, base: 0 }, this.#resolution);
    return `Δ ${by > 0 ? '+' : ''}${text}`;
  }

  clip(context: Context): void {
    const { left, top, width, height } = this.#frame;
    context.beginPath();
    context.rect(left, top, width, height);
    context.clip();
  }

  drawGrid(context: Context, theme: Theme): void {
    const { left, width } = this.#frame;
    this.#eachTick((value) => {
      context.fillStyle = theme.colour(value === 0 ? 'strong' : 'line');
      context.fillRect(left, Math.round(this.#y.at(value)), width, 1);
    });
  }

  drawLabels(context: Context, theme: Theme): void {
    const { left, top } = this.#frame;
    context.fillStyle = theme.colour('soft');
    context.textAlign = 'right';
    // What frames a plot stands close below it: no label reaches there. Above it is its title.
    const lowest = footOf(this.#frame) - (theme.textSize * LABEL_PITCH) / 2;
    let above = Number.POSITIVE_INFINITY;
    this.#eachTick((value) => {
      const y = Math.min(Math.max(this.#y.at(value), top), lowest);
      if (y > above - theme.textSize * LABEL_PITCH) return;
      above = y;
      context.fillText(labelText(value, this.#labels), left - 6, y);
    });
  }

  drawBand(context: Context, { low, high }: Band): void {
    const { left, width } = this.#frame;
    const upper = this.#y.at(high);
    const lower = this.#y.at(low);
    context.globalAlpha = TINT;
    context.fillRect(left, upper, width, lower - upper);
    context.globalAlpha = 1;
    context.fillRect(left, Math.round(upper), width, 1);
    context.fillRect(left, Math.round(lower), width, 1);
  }

  drawLine(context: Context, columns: ColumnBuffer, { dash, width }: Pick<Trace, 'dash' | 'width'>): void {
    context.beginPath();
    stripPath(context, columns, this.#mapping(columns.count), DASHES[dash], width);
    context.fill();
  }

  /**
   * A limit that holds to both sides of zero and may change with time: its edges, and a tint beyond
   * them.
   */
  drawLimit(context: Context, columns: ColumnBuffer, { dash, width }: Trace): void {
    const upper = this.#mapping(columns.count);
    const lower = { ...upper, y: mirrored(upper.y) };
    if (endless.length < columns.count)
      endless = new Float64Array(columns.count).fill(Number.POSITIVE_INFINITY);
    const beyond = { lows: columns.lows, highs: endless, count: columns.count, firstColumn: 0 };
    context.globalAlpha = TINT;
    context.beginPath();
    for (const map of [upper, lower]) stripPath(context, beyond, map, DASHES.solid, 0);
    context.fill();
    context.globalAlpha = 1;
    context.beginPath();
    for (const map of [upper, lower]) stripPath(context, columns, map, DASHES[dash], width);
    context.fill();
  }

  /** A dot on a value in a column; none where the value is off the scale. */
  drawMark(context: Context, x: number, value: number): void {
    const y = this.#y.at(value);
    if (!contains(this.#frame, x, y)) return;
    context.beginPath();
    context.arc(x, y, 3.5, 0, 2 * Math.PI);
    context.fill();
    context.stroke();
  }

  /** What is worth reading of a value, SI. */
  get #resolution(): number {
    return (this.#range.high - this.#range.low) * READ_TO;
  }

  #mapping(count: number): Mapping {
    const { left, width } = this.#frame;
    return { left, columnWidth: width / count, y: this.#y };
  }

  #scale(): Scale {
    const { low, high } = this.#range;
    return linearScale(low, high, footOf(this.#frame) - INSET, this.#frame.top + INSET);
  }

  #labelling(): Labelling {
    const { low, high, step } = this.#range;
    return labelling(low, high, step, this.#unit);
  }

  #eachTick(draw: (value: number) => void): void {
    const { low, high, step } = this.#range;
    const [first, last] = tickRange(low, high, step);
    for (let k = first; k <= last; k++) draw(k * step);
  }
}
