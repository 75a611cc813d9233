import './loop.css';
import { type LoopAnalysis, type OperatingPoint, startingPoint } from '../../shared/analysis.ts';
import { CHANNEL_INDEX as C } from '../../shared/channels.ts';
import { ranged } from '../../shared/format.ts';
import type { ParameterChanges, Parameters } from '../../shared/parameters/table.ts';
import { AnalysisClient } from '../app/analysisClient.ts';
import { button, element } from '../app/dom.ts';
import { createSegmented } from '../app/segmented.ts';
import { Canvas } from '../charts/canvas.ts';
import type { Area } from '../charts/plot.ts';
import { readTheme } from '../charts/theme.ts';
import { FILTER_WORDS } from './filterGain.ts';
import {
  type Curve,
  drawFrequencyPlot,
  type FrequencyRange,
  frequencyAt,
  rangeOf,
  xOf,
} from './frequencyPlot.ts';
import { createLoopFiguresTable } from './loopFiguresTable.ts';
import { type HandleName, LoopHandles } from './loopHandles.ts';
import { NewestWins } from './newestWins.ts';
import { drawNyquist } from './nyquistPlot.ts';
import { notchFor } from './placeNotch.ts';
import { type Resonance, resonanceNear, resonances } from './resonance.ts';
import { gainsForCrossover, mainCrossover } from './shapeCrossover.ts';

export interface LoopViewOptions {
  /** Sets parameters if they are legal; returns what is wrong, or null. */
  shape(changes: ParameterChanges, words: string, gesture: string): string | null;
  /** Says something to whoever looks. */
  note(words: string): void;
}

interface Question {
  readonly parameters: Parameters;
  readonly point: OperatingPoint;
}

const LOWEST_FREQUENCY = 1;
const GAP = 14;
const LABELS = 44;
const FOOT = 20;
const NARROW = 640;
const decibels = (ratio: number) => 20 * Math.log10(ratio);
const whole = (value: number) => value.toFixed(0).replace('-', '−');

/** The loop while it runs: plots, figures, and handles to shape it. It analyses only while it is shown. */
export class LoopView {
  readonly element: HTMLElement;
  readonly #options: LoopViewOptions;
  readonly #plots = element('div', { class: 'loop-plots' });
  readonly #canvas = new Canvas();
  readonly #figures = createLoopFiguresTable();
  readonly #friction;
  readonly #handles: LoopHandles;
  readonly #queue: NewestWins<Question, LoopAnalysis>;
  readonly #pin: HTMLButtonElement;
  readonly #watcher = new ResizeObserver(() => this.draw());
  #parameters: Parameters;
  #temperature: Pick<OperatingPoint, 'windingTemperature' | 'carrierTemperature'> | null = null;
  /** The last analysis, and the parameters it belongs to. */
  #answer: { readonly analysis: LoopAnalysis; readonly parameters: Parameters } | null = null;
  #pinned: LoopAnalysis | null = null;
  #gainArea: Area = { left: 0, top: 0, width: 1, height: 1 };
  #range: FrequencyRange = { low: LOWEST_FREQUENCY, high: 1000 };

  constructor(parameters: Parameters, options: LoopViewOptions) {
    this.#options = options;
    this.#parameters = parameters;
    const client = new AnalysisClient();
    this.#queue = new NewestWins(
      ({ parameters: p, point }) => client.analyse(p, point),
      (analysis, { parameters: p }) => this.#take(analysis, p),
      (error) => this.#figures.refuse(error instanceof Error ? error.message : String(error)),
    );
    this.#friction = createSegmented('Guide', ['sliding', 'presliding'] as const, () => this.#ask());
    this.#pin = button('Pin', () => this.togglePin(), { title: 'Keep this loop for comparison' });
    this.#handles = new LoopHandles({
      frequencyAt: (x) => frequencyAt(this.#gainArea, this.#range, x),
      onMove: (name, frequency, gesture) => this.#moveHandle(name, frequency, gesture),
      onShape: (changes, words, gesture) => this.#shape(changes, words, gesture),
    });
    this.#plots.append(this.#canvas.element, ...this.#handles.elements);
    this.#plots.addEventListener('dblclick', (event) => this.#notchAt(event));
    const notch = button('Notch the peak', () => this.#notchHighest(), {
      title: 'A notch on the highest resonance; double click one in the plot to choose it',
    });
    this.element = element(
      'div',
      { class: 'loop-view' },
      this.#plots,
      element(
        'div',
        { class: 'loop-side' },
        element('div', { class: 'loop-tools' }, this.#friction.element, notch, this.#pin),
        this.#figures.element,
      ),
    );
    this.#watcher.observe(this.#plots);
    this.#ask();
  }

  setParameters(p: Parameters): void {
    this.#parameters = p;
    this.#ask();
  }

  /** Takes the temperatures of the running axis as those to analyse at, once they have moved by a kelvin. */
  setRecord(now: Float64Array): void {
    const windingTemperature = now[C.windingTemperature]!;
    const carrierTemperature = now[C.carrierTemperature]!;
    const at = this.#temperature;
    if (at && Math.abs(at.windingTemperature - windingTemperature) < 1) return;
    this.#temperature = { windingTemperature, carrierTemperature };
    this.#ask();
  }

  togglePin(): void {
    this.#pinned = this.#pinned ? null : (this.#answer?.analysis ?? null);
    this.#pin.textContent = this.#pinned ? 'Unpin' : 'Pin';
    this.#showFigures();
    this.draw();
  }

  draw(): void {
    const { clientWidth: width, clientHeight: height } = this.#plots;
    if (!this.#answer || width === 0 || height === 0) return;
    const { analysis, parameters } = this.#answer;
    const theme = readTheme(this.#plots);
    const { context } = this.#canvas;
    this.#canvas.resize(width, height);
    this.#canvas.clear();

    const columns = width < NARROW ? [0.6, 0.4] : [0.42, 0.31, 0.27];
    const areas = columnsOf(width, columns);
    const [left, right, last] = areas;
    this.#range = { low: LOWEST_FREQUENCY, high: analysis.frequency.at(-1)! };
    const [upper, lower] = splitColumn(left!, height, 0.58);
    this.#gainArea = upper;
    const all = this.#pinned ? [this.#pinned, analysis] : [analysis];
    /** The coarsest of the steps that a person counts in, where finer ones would crowd. */
    const stepOf = (span: number, steps: readonly number[], area: Area) =>
      steps.find((step) => (area.height * step) / span > 1.6 * theme.textSize) ?? steps.at(-1)!;
    const curves = (
      pick: (a: LoopAnalysis) => (k: number) => number,
      colour: string,
      dash: number[] = [],
    ): Curve[] =>
      all.map((a) => ({ frequency: a.frequency, value: pick(a), colour, dash, ghost: a === this.#pinned }));
    const plot = (
      area: Area,
      title: string,
      bounds: [number, number],
      steps: readonly number[],
      drawn: Curve[],
      foot: boolean,
    ) =>
      drawFrequencyPlot(
        context,
        theme,
        area,
        title,
        this.#range,
        rangeOf(drawn, this.#range, bounds, stepOf(bounds[1] - bounds[0], steps, area), whole),
        drawn,
        foot,
      );

    const gain = curves((a) => (k) => decibels(a.openLoop.magnitude[k]!), theme.accent);
    plot(upper, 'Open loop |L|, dB', [-60, 80], [10, 20, 40], gain, false);
    plot(
      lower,
      'Phase of L, °',
      [-540, 0],
      [90, 180, 360],
      curves((a) => (k) => (a.openLoop.phase[k]! * 180) / Math.PI, theme.accent),
      true,
    );
    const [sensitivity, stiffness] = splitColumn(right!, height, 0.5);
    plot(
      sensitivity,
      '|S|, |T| dashed, dB',
      [-40, 20],
      [10, 20],
      [
        ...curves((a) => (k) => decibels(a.sensitivity.magnitude[k]!), theme.quantity('error')),
        ...curves((a) => (k) => decibels(a.closedLoop.magnitude[k]!), theme.quantity('setpoint'), [6, 4]),
      ],
      false,
    );
    const logStiffness = curves(
      (a) => (k) => Math.log10(a.stiffness.magnitude[k]! / 1e6),
      theme.quantity('force'),
    );
    drawFrequencyPlot(
      context,
      theme,
      stiffness,
      'Stiffness, N/µm',
      this.#range,
      {
        ...rangeOf(logStiffness, this.#range, [-3, 5], 1, whole),
        text: powerOfTen,
      },
      logStiffness,
      true,
    );
    if (last) {
      const area = {
        left: last.left - LABELS + 8,
        top: 0,
        width: last.width + LABELS - 8,
        height: height - FOOT,
      };
      drawNyquist(context, theme, area, analysis, this.#pinned);
    }
    this.#placeHandles(parameters, analysis);
  }

  #ask(): void {
    const parameters = this.#parameters;
    const point = { ...startingPoint(parameters), ...this.#temperature, friction: this.#friction.value };
    this.#queue.ask({ parameters, point });
  }

  #take(analysis: LoopAnalysis, parameters: Parameters): void {
    this.#answer = { analysis, parameters };
    this.#showFigures();
    this.draw();
  }

  #showFigures(): void {
    if (this.#answer) this.#figures.show(this.#answer.analysis.figures, this.#pinned?.figures ?? null);
  }

  #loopGain() {
    const { frequency, openLoop } = this.#answer!.analysis;
    return { frequency, magnitude: openLoop.magnitude };
  }

  #placeHandles(p: Parameters, analysis: LoopAnalysis): void {
    const crossover = mainCrossover(p, this.#loopGain(), analysis.figures.crossovers);
    this.#handles.place(p, crossover, this.#gainArea.height, (frequency) => {
      const x = xOf(this.#gainArea, this.#range, frequency);
      return x < this.#gainArea.left || x > this.#gainArea.left + this.#gainArea.width ? null : x;
    });
  }

  #moveHandle(name: HandleName, frequency: number, gesture: string): void {
    if (!this.#answer) return;
    if (name !== 'crossover') {
      const wanted = { [`${name}Frequency`]: Number(frequency.toPrecision(4)) };
      this.#shape(wanted, `${FILTER_WORDS[name]} at ${ranged(frequency, 'Hz')}`, gesture);
      return;
    }
    const gains = gainsForCrossover(this.#answer.parameters, this.#loopGain(), frequency);
    if (gains) this.#shape(gains, `crossover ${ranged(frequency, 'Hz')}`, gesture);
  }

  #shape(changes: ParameterChanges, words: string, gesture: string): void {
    const problem = this.#options.shape(changes, words, gesture);
    if (problem) this.#options.note(problem);
  }

  #notchHighest(): void {
    if (!this.#answer) return;
    const [highest] = resonances(this.#loopGain());
    if (highest) this.#placeNotch(highest);
    else this.#options.note('No resonance stands out of this loop.');
  }

  #notchAt(event: MouseEvent): void {
    if (!this.#answer || event.target !== this.#canvas.element) return;
    const x = event.clientX - this.#plots.getBoundingClientRect().left;
    if (x > this.#gainArea.left + this.#gainArea.width) return;
    const frequency = frequencyAt(this.#gainArea, this.#range, x);
    const near = resonanceNear(resonances(this.#loopGain()), frequency);
    if (near) this.#placeNotch(near);
    else this.#options.note(`No resonance near ${ranged(frequency, 'Hz')}.`);
  }

  #placeNotch(resonance: Resonance): void {
    const placed = notchFor(this.#answer!.parameters, resonance);
    if (typeof placed === 'string') {
      this.#options.note(placed);
      return;
    }
    this.#shape(placed.changes, placed.words, `notch ${resonance.frequency}`);
    this.#options.note(placed.words);
  }
}

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** 10³, and 0.1, 1, 10, 100 where that is shorter. */
function powerOfTen(power: number): string {
  return power > 2 ? `10${RAISED[power]}` : `${Number(`1e${power}`)}`;
}

/** Columns with room for the labels of their values. */
function columnsOf(width: number, shares: readonly number[]): Area[] {
  let left = 0;
  return shares.map((share) => {
    const area = { left: left + LABELS, top: 0, width: width * share - LABELS - GAP / 2, height: 0 };
    left += width * share;
    return area;
  });
}

/** Two plots above each other, the lower with room for frequencies. */
function splitColumn({ left, width }: Area, height: number, share: number): [Area, Area] {
  const usable = height - FOOT - GAP / 2;
  const first = usable * share;
  return [
    { left, width, top: 0, height: first },
    { left, width, top: first + GAP / 2, height: usable - first },
  ];
}
