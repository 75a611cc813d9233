import { Canvas } from '../../plot/canvas/canvas.ts';
import { paint } from '../../plot/canvas/paint.ts';
import type { Theme } from '../../plot/canvas/theme.ts';
import { BodeChart } from '../../plot/loop/bode.ts';
import type { FrequencyAxis } from '../../plot/loop/frequencyAxis.ts';
import { frequencyLabels, type Graph } from '../../plot/loop/graph.ts';
import type { LoopChartData } from '../../plot/loop/loopData.ts';
import { BODE, type BodeName, type ResponseSpec } from '../../plot/loop/responses.ts';
import { element } from '../../ui/dom.ts';
import type { Pane } from './pane.ts';

/** Shares of the height: magnitude, and phase below it. */
const MAGNITUDE_SHARE = 0.62;
/**
 * Room for labels beside and below, as a multiple of the text size; between the plots, CSS pixels.
 */
const GUTTER = 3.4;
const FOOT = 1.5;
const GAP = 6;
/** Height of the coherence strip, as a multiple of the text size. */
const STRIP = 1.5;

/**
 * Magnitude over phase over one frequency axis, with the pinned and the measured loop beside the
 * present one.
 */
export class BodePane implements Pane {
  readonly title: string;
  readonly legend: readonly ResponseSpec[];
  readonly element = element('div', { class: 'loop-pane' });
  readonly #chart: BodeChart;
  readonly #canvas = new Canvas();
  #width = 0;
  #height = 0;

  constructor(name: BodeName, axis: FrequencyAxis) {
    this.title = BODE[name].title;
    this.legend = BODE[name].responses;
    this.#chart = new BodeChart(name, axis);
    this.element.append(this.#canvas.element);
  }

  get magnitude(): Graph {
    return this.#chart.magnitude;
  }

  measure(theme: Theme): void {
    const { width, height } = this.element.getBoundingClientRect();
    this.#canvas.resize(width, height);
    [this.#width, this.#height] = [width, height];
    this.#arrange(theme, false);
  }

  draw(data: LoopChartData | null, theme: Theme): void {
    if (this.#canvas.blurred) this.measure(theme);
    this.#canvas.clear();
    if (!data) return;
    const chart = this.#chart;
    const { textSize } = theme;
    const hasStrip = chart.spec.isShaped && data.measured !== null;
    this.#arrange(theme, hasStrip);
    chart.fit(data, textSize);
    paint(this.#canvas.context, theme, [
      ...chart.magnitudeMarks(data, textSize),
      ...chart.phaseMarks(data, textSize),
      ...(hasStrip ? chart.coherenceMarks(data, textSize) : []),
      ...frequencyLabels(hasStrip ? chart.coherence : chart.phase, textSize),
      ...chart.cursorMarks(data),
    ]);
  }

  #arrange({ textSize }: Theme, hasStrip: boolean): void {
    const { magnitude, phase, coherence } = this.#chart;
    const left = GUTTER * textSize;
    const width = Math.max(1, this.#width - left - 2);
    const strip = hasStrip ? STRIP * textSize + GAP : 0;
    const height = Math.max(2, this.#height - FOOT * textSize - GAP - strip - 2);
    const upper = Math.round(MAGNITUDE_SHARE * height);
    magnitude.frame = { left, top: 1, width, height: upper };
    phase.frame = { left, top: 1 + upper + GAP, width, height: height - upper };
    coherence.frame = { left, top: 1 + height + 2 * GAP, width, height: STRIP * textSize };
  }
}
