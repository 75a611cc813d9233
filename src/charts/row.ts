import { valueAt } from '../../shared/core/at.ts';
import { ranged } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Theme } from '../plot/canvas/theme.ts';
import type { Frame } from '../plot/frame.ts';
import { ColumnBuffer, type ColumnSource } from '../plot/strip/columnBuffer.ts';
import { StripPlot } from '../plot/strip/stripPlot.ts';
import type { Band, Trace } from '../plot/strip/trace.ts';
import { element, setText } from '../ui/dom.ts';
import { LegendEntry } from './legendEntry.ts';
import type { RowSpec } from './rows.ts';
import { ScanColumns } from './scanColumns.ts';
import type { TimeView } from './timeView.ts';

/**
 * The limit joins the scale when the lines have used up this share of it; before, it lies off the
 * chart.
 */
const NEAR = 0.5;
/** A pinned run is drawn beneath the present one: thin and faint. */
const GHOST = { dash: 'solid', width: 1.5 } as const;
const GHOST_DEPTH = 0.6;
const PINNED = 'faint: pinned';
const LABEL_GROUND = 0.78;

interface Line {
  readonly trace: Trace;
  readonly columns: ColumnBuffer;
  /** The same of a pinned run. */
  readonly ghost: ColumnBuffer;
  readonly entry: LegendEntry;
  shown: boolean;
  relevant: boolean;
}

/**
 * One of the stacked charts: its lines on a scale of their own, their legend, and its title, which
 * folds it away.
 */
export class Row {
  readonly element: HTMLElement;
  readonly #place = element('div', { class: 'charts-plot' });
  readonly #unit = element('span', { class: 'charts-unit' });
  readonly #spec: RowSpec;
  readonly #onChange: () => void;
  readonly #plot: StripPlot;
  readonly #lines: readonly Line[];
  readonly #limit: Line | null;
  #band: Band | null = null;
  readonly #scan = new ScanColumns();
  /** Speed of the scan to which the scale belongs, m/s; null: everything belongs to it. */
  #scanSpeed: number | null = null;
  /** What lies off the scale, farthest from zero; null: nothing. */
  #beyond: number | null = null;
  #hasPinned = false;

  /** `onChange` is called when a person has shown, hidden or folded something. */
  constructor(spec: RowSpec, onChange: () => void) {
    this.#spec = spec;
    this.#onChange = onChange;
    this.#plot = new StripPlot(spec.unit, spec.scale);
    this.#lines = spec.traces.map((trace) => this.#line(trace));
    this.#limit = spec.limit ? this.#line(spec.limit) : null;
    const entries = [...this.#lines, ...(this.#limit ? [this.#limit] : [])].map(({ entry }) => entry.item);
    const title = this.#title();
    const legend = element(
      'ul',
      { class: 'charts-legend', 'aria-label': `Lines of ${spec.title}` },
      ...entries,
    );
    this.element = element(
      'section',
      { class: 'charts-row', 'aria-label': spec.title },
      title,
      this.#place,
      legend,
    );
  }

  get title(): string {
    return this.#spec.title;
  }

  /** Whether its plot is in sight: neither folded away nor left out at the presenter size. As it was last measured. */
  get isOpen(): boolean {
    return this.#plot.frame.height > 0;
  }

  get frame(): Frame {
    return this.#plot.frame;
  }

  /** Returns whether lines came or went, and with them the room that the row takes. */
  setParameters(p: Parameters): boolean {
    this.#band = this.#spec.band?.(p) ?? null;
    this.#scanSpeed = this.#spec.scanAlone && p.program === 'scan' ? p.scanSpeed : null;
    const changed = this.#lines.filter(({ trace, relevant }) => (trace.relevant?.(p) ?? true) !== relevant);
    for (const line of changed) {
      line.relevant = !line.relevant;
      line.entry.item.hidden = !line.relevant;
    }
    return changed.length > 0;
  }

  /** Reads where the page has put the plot, relative to `origin`. */
  measure(origin: DOMRect): void {
    const { left, top, width, height } = this.#place.getBoundingClientRect();
    this.#plot.frame = { left: left - origin.left, top: top - origin.top, width, height };
  }

  /** Reads the window from the history, and from a pinned run, and fits the scale to both. */
  read(
    history: ColumnSource,
    pinned: ColumnSource | null,
    view: TimeView,
    count: number,
    textSize: number,
  ): void {
    this.#hasPinned = pinned !== null;
    const counting = this.#scanSpeed === null ? null : this.#scan.read(history, view, count, this.#scanSpeed);
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    const ends: number[] = [];
    const take = (columns: ColumnBuffer, source: ColumnSource) => {
      columns.read(source, view, count);
      low = Math.min(low, columns.low(counting));
      high = Math.max(high, columns.high(counting));
      if (counting) ends.push(columns.low(), columns.high());
    };
    for (const { columns, ghost } of this.#visible()) {
      take(columns, history);
      if (pinned) take(ghost, pinned);
    }
    if (this.#limit?.shown) {
      this.#limit.columns.read(history, view, count);
      const limit = this.#limit.columns.high();
      if (Math.max(-low, high) > NEAR * limit) {
        low = Math.min(low, -limit);
        high = Math.max(high, limit);
      }
    }
    if (low <= high) this.#plot.fit(low, high, textSize);
    const beyond = ends.filter((end) => Number.isFinite(end) && !this.#plot.shows(end));
    this.#beyond = beyond.length === 0 ? null : Math.max(...beyond.map(Math.abs));
  }

  draw(context: CanvasRenderingContext2D, theme: Theme): void {
    const [plot, limit] = [this.#plot, this.#limit];
    context.save();
    plot.clip(context);
    plot.drawGrid(context, theme);
    if (this.#band) {
      context.fillStyle = theme.colour(this.#spec.traces[0].quantity);
      plot.drawBand(context, this.#band);
    }
    if (this.#hasPinned) this.#drawPinned(context, theme);
    for (const { trace, columns } of this.#visible()) {
      context.fillStyle = theme.colour(trace.quantity);
      plot.drawLine(context, columns, trace);
    }
    if (limit?.shown) {
      context.fillStyle = theme.colour(limit.trace.quantity);
      plot.drawLimit(context, limit.columns, limit.trace);
    }
    if (this.#hasPinned) this.#labelPinned(context, theme);
    context.restore();
    plot.drawLabels(context, theme);
  }

  #drawPinned(context: CanvasRenderingContext2D, theme: Theme): void {
    context.globalAlpha = GHOST_DEPTH;
    for (const { trace, ghost } of this.#visible()) {
      context.fillStyle = theme.colour(trace.quantity);
      this.#plot.drawLine(context, ghost, { ...trace, ...GHOST });
    }
    context.globalAlpha = 1;
  }

  /** Says which of the lines are pinned, without crossing them out. */
  #labelPinned(context: CanvasRenderingContext2D, theme: Theme): void {
    const { left, top, width } = this.frame;
    const right = left + width - theme.textSize / 2;
    const length = context.measureText(PINNED).width;
    context.fillStyle = theme.colour('ground');
    context.globalAlpha = LABEL_GROUND;
    context.fillRect(right - length, top, length, theme.textSize * 1.25);
    context.globalAlpha = 1;
    context.fillStyle = theme.colour('soft');
    context.textAlign = 'right';
    context.fillText(PINNED, right, top + theme.textSize * 0.7);
  }

  /** Marks the lines where the cursor crosses them. */
  drawMarks(context: CanvasRenderingContext2D, theme: Theme, column: number, x: number): void {
    context.strokeStyle = theme.colour('panel');
    for (const { trace, columns } of this.#visible()) {
      context.fillStyle = theme.colour(trace.quantity);
      this.#plot.drawMark(context, x, valueAt(columns.lows, column));
      this.#plot.drawMark(context, x, valueAt(columns.highs, column));
    }
  }

  /** Shows the values in a column in the legend; null: the newest. With a second column `from`: what has changed since. */
  readout(column: number | null, from: number | null): void {
    const beyond =
      this.#beyond === null
        ? ''
        : `up to ${ranged(this.#beyond, this.#spec.unit)} off the scale in run-up and return`;
    setText(this.#unit, [this.#plot.unitText, this.#band?.name ?? '', beyond].filter(Boolean).join(', '));
    for (const { columns, entry } of this.#visible()) entry.setValue(this.#valueText(columns, column, from));
    if (this.#limit?.shown) {
      const { columns, entry } = this.#limit;
      entry.setValue(ranged(columns.highs[column ?? columns.last()] ?? Number.NaN, this.#spec.unit));
    }
  }

  /** The values in a column in words. */
  describe(column: number, from: number | null): string {
    const values = this.#visible().map(
      ({ trace, columns }) => `${trace.name} ${this.#valueText(columns, column, from)}`,
    );
    return `${this.#spec.title}, ${this.#plot.unitText}: ${values.join(', ')}`;
  }

  #valueText(columns: ColumnBuffer, at: number | null, from: number | null): string {
    const column = at ?? columns.last();
    if (from !== null) return this.#plot.differenceText(middle(columns, from), middle(columns, column));
    return this.#plot.valueText(columns.lows[column] ?? Number.NaN, columns.highs[column] ?? Number.NaN);
  }

  #visible(): Line[] {
    return this.#lines.filter(({ shown, relevant }) => shown && relevant);
  }

  #title(): HTMLElement {
    const title = element(
      'button',
      { type: 'button', class: 'charts-title', 'aria-expanded': 'true', title: 'Fold or unfold' },
      this.#spec.title,
      this.#unit,
    );
    title.addEventListener('click', () => {
      const folded = this.element.classList.toggle('charts-folded');
      title.setAttribute('aria-expanded', String(!folded));
      this.#onChange();
    });
    return title;
  }

  #line(trace: Trace): Line {
    const line: Line = {
      trace,
      columns: new ColumnBuffer(trace.channel),
      ghost: new ColumnBuffer(trace.channel),
      entry: new LegendEntry(trace, (shown) => {
        line.shown = shown;
        if (!shown) line.entry.setValue('');
        this.#onChange();
      }),
      shown: true,
      relevant: true,
    };
    return line;
  }
}

/** Between the least and the most of a column; NaN where nothing was recorded. */
function middle({ lows, highs }: ColumnBuffer, column: number): number {
  return ((lows[column] ?? Number.NaN) + (highs[column] ?? Number.NaN)) / 2;
}
