import '../charts/charts.css';
import { at } from '../../shared/core/at.ts';
import { CHANNELS, type ChannelName } from '../../shared/core/channels.ts';
import { candidatePen } from '../plot/pens.ts';
import { ColumnBuffer, type Span } from '../plot/strip/columnBuffer.ts';
import { StripPlot } from '../plot/strip/stripPlot.ts';
import { element, setText } from '../ui/dom.ts';
import { labelled } from '../ui/picker.ts';
import type { Candidate } from './candidate.ts';
import { reachedTogether } from './commonRange.ts';
import { StripCanvas } from './stripCanvas.ts';

/** What can be laid over each other, the first to begin with. */
const CHOICES: readonly ChannelName[] = [
  'followingError',
  'tablePosition',
  'tableSpeed',
  'motorForce',
  'forceCurrent',
  'handForce',
  'windingTemperature',
];

/** One quantity of all candidates in one chart; they differ in the kind of line. */
export class CommonChart {
  readonly #select: HTMLSelectElement;
  readonly #legend = element('span', { class: 'common-chart-legend' });
  readonly #unit = element('span');
  /** Half a letter above and below, for the numbers at both ends of the scale. */
  readonly #place = new StripCanvas({ class: 'common-chart-plot', gutter: 4, edge: 0.5 });
  readonly element: HTMLElement;
  #channel: ChannelName = at(CHOICES, 0);
  #plot = plotOf(this.#channel);
  #columns: readonly ColumnBuffer[] = [];

  /** `onChoose`: another quantity is to be drawn. */
  constructor(onChoose: () => void) {
    this.#select = element(
      'select',
      {
        onchange: () => {
          this.#channel = this.#select.value as ChannelName;
          this.#plot = plotOf(this.#channel);
          this.#columns = [];
          this.restyle();
          onChoose();
        },
      },
      ...CHOICES.map((name) => element('option', { value: name }, CHANNELS[name].label)),
    );
    this.element = element(
      'section',
      { class: 'common-chart', 'aria-label': 'Both in one chart' },
      element(
        'div',
        { class: 'common-chart-head' },
        labelled('Compared', this.#select),
        this.#unit,
        this.#legend,
      ),
      this.#place.element,
    );
  }

  /** After a change of size, theme or text size. */
  restyle(): void {
    this.#place.restyle();
  }

  /** Draws a window of each candidate up to a moment, s; `length` says how long it is. */
  draw(
    candidates: readonly { readonly letter: string; readonly candidate: Candidate }[],
    moment: number,
    window: (columns: number) => Span,
    length: string,
  ): void {
    const plot = this.#plot;
    const theme = this.#place.measure(plot);
    const count = Math.floor(plot.frame.width);
    if (!theme || count < 2) return;
    if (this.#columns.length !== candidates.length)
      this.#columns = candidates.map(() => new ColumnBuffer(this.#channel));
    const reached = this.#columns.map((columns, i) => {
      const { candidate } = at(candidates, i);
      columns.read(candidate.history, window(count), count);
      return { low: columns.low(), high: columns.high(), isStopped: candidate.isStoppedAt(moment) };
    });
    const { low, high } = reachedTogether(reached);
    if (low <= high) plot.fit(low, high, theme.textSize);
    this.#place.paint(plot, theme, (context) => {
      context.fillStyle = theme.colour(CHANNELS[this.#channel].quantity);
      this.#columns.forEach((columns, i) => {
        const { dash = 'solid', width = 2 } = candidatePen(at(candidates, i).letter, 'ink');
        plot.drawLine(context, columns, { dash, width });
      });
    });
    setText(this.#unit, `${plot.unitText}, last ${length}`);
    setText(this.#legend, candidates.map(({ letter }, i) => `${letter} ${LINES[i] ?? ''}`).join(', '));
  }
}

/** How the lines of the candidates look, in words. */
const LINES = ['unbroken', 'dashed', 'dash and dot', 'dotted'];

function plotOf(channel: ChannelName): StripPlot {
  return new StripPlot(CHANNELS[channel].unit, { minSpan: 1e-9, zero: channel !== 'windingTemperature' });
}
