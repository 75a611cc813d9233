import '../charts/charts.css';
import type { History } from '../history/history.ts';
import { Canvas } from '../plot/canvas/canvas.ts';
import { readTheme, type Theme } from '../plot/canvas/theme.ts';
import { ColumnBuffer, type Span } from '../plot/strip/columnBuffer.ts';
import { StripPlot } from '../plot/strip/stripPlot.ts';
import { element, setText } from '../ui/dom.ts';

const TRACE = {
  channel: 'followingError',
  name: 'Encoder',
  quantity: 'error',
  dash: 'solid',
  width: 1.5,
} as const;
/** Room for the numbers at its left, in sizes of the text. */
const GUTTER = 2.6;

/** A small chart of the following error over the last moves. Its scale is fitted from outside: all candidates share one. */
export class ErrorStrip {
  readonly #unit = element('span');
  readonly #time = element('span');
  readonly #canvas = new Canvas();
  readonly #place = element('div', { class: 'candidate-strip-plot' }, this.#canvas.element);
  readonly element = element(
    'div',
    { class: 'candidate-strip' },
    element('p', { class: 'candidate-strip-title' }, this.#unit, this.#time),
    this.#place,
  );
  readonly #plot = new StripPlot('mm', { minSpan: 2e-9, zero: true });
  readonly #columns = new ColumnBuffer('followingError');
  #theme: Theme | null = null;

  /** After a change of size, theme or text size. */
  restyle(): void {
    this.#theme = null;
  }

  /** Reads a window of the run. False where there is nothing to draw it on. */
  read(history: History, window: (columns: number) => Span): boolean {
    const theme = this.#measure();
    const count = Math.floor(this.#plot.frame.width);
    if (!theme || count < 2) return false;
    this.#columns.read(history, window(count), count);
    return true;
  }

  get low(): number {
    return this.#columns.low();
  }

  get high(): number {
    return this.#columns.high();
  }

  /** Draws what was read on a scale from `low` to `high`, m; `tolerance` is the window that counts as settled. */
  draw(low: number, high: number, tolerance: number, seconds: string): void {
    const theme = this.#theme;
    if (!theme) return;
    const plot = this.#plot;
    const isKnown = low <= high;
    plot.fit(isKnown ? low : -tolerance, isKnown ? high : tolerance, theme.textSize);
    const { context } = this.#canvas;
    this.#canvas.clear();
    context.font = theme.font;
    context.textBaseline = 'middle';
    context.save();
    context.fillStyle = theme.colour('ground');
    const { left, top, width, height } = plot.frame;
    context.fillRect(left, top, width, height);
    plot.clip(context);
    plot.drawGrid(context, theme);
    context.fillStyle = theme.colour('error');
    plot.drawBand(context, { name: '', low: -tolerance, high: tolerance });
    plot.drawLine(context, this.#columns, TRACE);
    context.restore();
    plot.drawLabels(context, theme);
    setText(this.#unit, `Error, ${plot.unitText}`);
    setText(this.#time, seconds);
  }

  #measure(): Theme | null {
    if (this.#theme) return this.#theme;
    const { clientWidth, clientHeight } = this.#place;
    if (clientWidth === 0 || clientHeight === 0) return null;
    this.#canvas.resize(clientWidth, clientHeight);
    const theme = readTheme(this.#place);
    const left = Math.round(GUTTER * theme.textSize);
    this.#plot.frame = { left, top: 0, width: clientWidth - left, height: clientHeight };
    this.#theme = theme;
    return theme;
  }
}
