import '../charts/charts.css';
import type { History } from '../history/history.ts';
import { ColumnBuffer, type Span } from '../plot/strip/columnBuffer.ts';
import { StripPlot } from '../plot/strip/stripPlot.ts';
import { element, setText } from '../ui/dom.ts';
import { StripCanvas } from './stripCanvas.ts';

const TRACE = {
  channel: 'followingError',
  name: 'Encoder',
  quantity: 'error',
  dash: 'solid',
  width: 1.5,
} as const;

/** A small chart of the following error over the last moves. Its scale is fitted from outside: all candidates share one. */
export class ErrorStrip {
  readonly #unit = element('span');
  readonly #time = element('span');
  readonly #place = new StripCanvas({ class: 'candidate-strip-plot', gutter: 2.6, edge: 0.5 });
  readonly element = element(
    'div',
    { class: 'candidate-strip' },
    element('p', { class: 'candidate-strip-title' }, this.#unit, this.#time),
    this.#place.element,
  );
  readonly #plot = new StripPlot('mm', { minSpan: 2e-9, zero: true });
  readonly #columns = new ColumnBuffer('followingError');

  /** After a change of size, theme or text size. */
  restyle(): void {
    this.#place.restyle();
  }

  /** Reads a window of the run. False where there is nothing to draw it on. */
  read(history: History, window: (columns: number) => Span): boolean {
    const theme = this.#place.measure(this.#plot);
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
    const plot = this.#plot;
    const theme = this.#place.measure(plot);
    if (!theme) return;
    const isKnown = low <= high;
    plot.fit(isKnown ? low : -tolerance, isKnown ? high : tolerance, theme.textSize);
    this.#place.paint(plot, theme, (context) => {
      context.fillStyle = theme.colour('error');
      plot.drawBand(context, { name: '', low: -tolerance, high: tolerance });
      plot.drawLine(context, this.#columns, TRACE);
    });
    setText(this.#unit, `Error, ${plot.unitText}`);
    setText(this.#time, seconds);
  }
}
