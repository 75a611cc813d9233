import { ranged } from '../../shared/core/format.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import type {
  LoopAnalysis,
  LoopExperiment,
  MeasuredLoop,
  OperatingPoint,
} from '../../shared/protocol/analysis.ts';
import { type Bench, presentScene } from '../bench/bench.ts';
import { errorText } from '../clients/errorText.ts';
import { readTheme, type Theme } from '../plot/canvas/theme.ts';
import { FrequencyAxis } from '../plot/loop/frequencyAxis.ts';
import { button, element, setText } from '../ui/dom.ts';
import { prefer, preferredEntries } from '../ui/preferences.ts';
import { createFiguresTable } from './figuresTable.ts';
import { experimentOf, guideNote, type Sweep, suggestedSweep } from './forms/experiment.ts';
import { MeasureForm } from './forms/measureForm.ts';
import { type PointRequest, pointOf, requestOf, samePoint } from './forms/operatingPoint.ts';
import { createPointForm } from './forms/pointForm.ts';
import type { Shaping } from './handles/handle.ts';
import { HandleLayer } from './handles/handleLayer.ts';
import { bareResonances, handlesOf } from './handles/handles.ts';
import { notchFor } from './handles/placeNotch.ts';
import { resonanceNear } from './handles/resonance.ts';
import { NewestWins } from './newestWins.ts';
import { BodePane } from './panes/bodePane.ts';
import { BODE_KEYS, listenToBode } from './panes/bodePointer.ts';
import { EigenvaluesPane } from './panes/eigenvaluesPane.ts';
import { type Analysed, chartDataOf, type LoopData, type Measured } from './panes/loopData.ts';
import { NyquistPane } from './panes/nyquistPane.ts';
import { Slots } from './panes/slots.ts';
import { readoutAt } from './readout.ts';
import { hasMoved } from './staleness.ts';
import { verdictOf } from './verdict.ts';
import './loop.css';
import { present as known, valueAt } from '../../shared/core/at.ts';

/** Where analyses and measurements come from; `analysisClient.ts` is one. */
export interface LoopAnalyst {
  analyse(parameters: Parameters, point: OperatingPoint): Promise<LoopAnalysis>;
  /** Null when it was cancelled. */
  measure(experiment: LoopExperiment, onProgress: (share: number) => void): Promise<MeasuredLoop | null>;
  cancelMeasuring(): void;
}

export interface LoopViewOptions {
  readonly analyst: LoopAnalyst;
  /** Makes checked changes, those of one gesture in one step; returns what is wrong, or null. */
  change(changes: ParameterChanges, text: string, gesture: string | null): string | null;
}

interface Wanted {
  readonly parameters: Parameters;
  readonly point: OperatingPoint;
}

const HINT = 'Drag the handles. A click on a diamond, or a double click on a peak, puts a notch there.';
/** The plots begin here, Hz, or a decade lower for a slow loop. */
const LOWEST = 1;
const SLOW = 5;

/** The loop of the axis as it is set now: Bode and Nyquist plots, figures, and handles to shape it with. */
export class LoopView {
  /** What stands in the bar above: verdict, operating point, measuring, pinning. */
  readonly tools: HTMLElement;
  readonly #options: LoopViewOptions;
  readonly #axis = new FrequencyAxis();
  readonly #open = new BodePane('open', this.#axis);
  readonly #handles = new HandleLayer(this.#open.magnitude, (shaping, gesture) =>
    this.#shape(shaping, gesture),
  );
  readonly #slots: Slots;
  readonly #figures = createFiguresTable();
  readonly #verdict = element('p', { class: 'loop-verdict', role: 'status' }, 'Analysing the loop …');
  readonly #pin = button('Pin', () => this.#togglePinned(), {
    title: 'Keep this loop as a reference, drawn faintly behind the present loop',
  });
  #request: PointRequest = requestOf(preferredEntries('loop point'));
  readonly #point = createPointForm(this.#request, (request) => this.#requestFor(request));
  readonly #measure;
  readonly #readout = element('p', { class: 'loop-readout' }, HINT);
  readonly #spoken = element('p', { class: 'visually-hidden', role: 'status' });
  readonly #root: HTMLElement;
  readonly #queue;
  #theme: Theme | null = null;
  #bench: Bench;
  #now: Float64Array | null = null;
  #asked: Wanted | null = null;
  #paused = true;
  #shown = false;
  #dirty = true;
  /** What was said last, in the place of the reading at the cursor. */
  #message: string | null = null;
  /** A response that came before the first analysis. */
  #waiting: MeasuredLoop | null = null;
  #data: LoopData = { present: null, pinned: null, measured: null, isStale: false, cursor: null };

  constructor(host: HTMLElement, bench: Bench, options: LoopViewOptions) {
    this.#bench = bench;
    this.#options = options;
    this.#queue = new NewestWins(
      ({ parameters, point }: Wanted) => options.analyst.analyse(parameters, point),
      (analysis, wanted) => this.#take({ analysis, ...wanted }),
      (error) => this.#fail(error),
    );
    const touch = () => this.#touch();
    const bodes = {
      open: this.#open,
      closed: new BodePane('closed', this.#axis),
      stiffness: new BodePane('stiffness', this.#axis),
    };
    this.#slots = new Slots(
      { ...bodes, nyquist: new NyquistPane(touch), eigenvalues: new EigenvaluesPane(touch) },
      () => this.resize(),
    );
    for (const pane of Object.values(bodes)) this.#listenTo(pane);
    this.#open.element.append(this.#handles.element);
    this.#measure = new MeasureForm({
      onMeasure: (kind, sweep) => this.#begin(kind, sweep),
      onCancel: () => options.analyst.cancelMeasuring(),
      onClear: () => this.#become({ measured: null, isStale: false }),
    });
    this.tools = element(
      'div',
      { class: 'loop-tools' },
      this.#verdict,
      this.#point.element,
      this.#measure.element,
      this.#pin,
    );
    this.#root = element(
      'div',
      { class: 'loop', role: 'group', 'aria-label': 'Loop' },
      this.#slots.element,
      this.#figures.element,
      this.#readout,
      this.#spoken,
    );
    host.append(this.#root);
    new ResizeObserver(() => this.resize()).observe(this.#root);
  }

  /** Another set-up of the bench. */
  show(bench: Bench): void {
    const otherScene = bench.origin !== this.#bench.origin;
    this.#bench = bench;
    if (otherScene) this.#forget();
    this.#reconsider();
  }

  setShown(shown: boolean): void {
    this.#shown = shown;
    this.#reconsider();
    this.resize();
  }

  /** Once per display refresh, with the newest value of each channel; draws only what has changed. */
  draw(now: Float64Array, paused: boolean): void {
    if (!this.#shown) return;
    this.#now = now;
    this.#paused = paused;
    this.#reconsider();
    if (this.#dirty) this.#render();
  }

  /** Pins the loop of a set-up at the present operating point; null takes it off. */
  async pin(parameters: Parameters | null): Promise<void> {
    const point = pointOf(this.#request, parameters ?? this.#bench.parameters, this.#now, this.#paused);
    const analysis = parameters && (await this.#options.analyst.analyse(parameters, point));
    this.#become({ pinned: analysis && parameters && { analysis, parameters, point } });
    this.#showPinned();
  }

  /** Draws the points of a response measured on a real axis, once there is a loop of the model to draw them over. */
  layResponse(loop: MeasuredLoop): void {
    const { present } = this.#data;
    if (!present) {
      this.#waiting = loop;
      return;
    }
    this.#waiting = null;
    this.#become({ measured: { loop, kind: 'the real axis', analysis: present.analysis }, isStale: false });
    this.#tell(`Measured on the real axis: ${loop.frequency.length} points over the loop of the model.`);
  }

  resize(): void {
    this.#theme = null;
    this.#touch();
  }

  #touch(): void {
    this.#dirty = true;
  }

  #become(change: Partial<LoopData>): void {
    this.#data = { ...this.#data, ...change };
    this.#measure.showMeasured(this.#data.measured !== null);
    this.#touch();
  }

  #forget(): void {
    this.#options.analyst.cancelMeasuring();
    this.#become({ measured: null, isStale: false });
  }

  #requestFor(request: PointRequest): void {
    this.#request = request;
    prefer('loop point', JSON.stringify(request));
    this.#reconsider();
  }

  /** Asks for an analysis if the one that was asked for last is not the one that is wanted now. */
  #reconsider(): void {
    if (!this.#shown) return;
    const { parameters } = this.#bench;
    const point = pointOf(this.#request, parameters, this.#now, this.#paused);
    if (this.#asked?.parameters === parameters && samePoint(this.#asked.point, point)) return;
    this.#asked = { parameters, point };
    this.#queue.ask(this.#asked);
  }

  #take(present: Analysed): void {
    const { analysis, point, parameters } = present;
    const { frequency, figures } = analysis;
    const slow = (figures.crossover ?? SLOW) < SLOW;
    this.#axis.setRange(slow ? LOWEST / 10 : LOWEST, valueAt(frequency, frequency.length - 1));
    const { measured } = this.#data;
    const isStale = measured !== null && hasMoved(measured.analysis, analysis, measured.loop.frequency);
    if (isStale && !this.#data.isStale)
      this.#tell('The measured points were taken with settings other than the present ones.');
    this.#become({ present, isStale });
    const verdict = verdictOf(figures);
    setText(this.#verdict, verdict.text);
    this.#verdict.title = verdict.text;
    this.#verdict.setAttribute('data-kind', verdict.kind);
    this.#root.classList.remove('is-failed');
    this.#point.show(point);
    this.#measure.suggest(suggestedSweep(parameters, point, figures));
    this.#figures.show(figures, this.#data.pinned?.analysis.figures ?? null);
    if (this.#waiting) this.layResponse(this.#waiting);
    if (this.#shown) this.#render();
  }

  #fail(error: unknown): void {
    setText(this.#verdict, errorText(error));
    this.#verdict.setAttribute('data-kind', 'alarm');
    this.#root.classList.add('is-failed');
  }

  #render(): void {
    this.#theme ??= this.#measureRoom();
    this.#dirty = false;
    const { present, cursor } = this.#data;
    const data = chartDataOf(this.#data);
    for (const pane of this.#slots.shown) pane.draw(data, this.#theme);
    if (!present) return;
    this.#handles.show(handlesOf(present));
    const reading = cursor === null ? HINT : readoutAt(present, cursor);
    setText(this.#readout, this.#message ?? reading);
  }

  #measureRoom(): Theme {
    const theme = readTheme(this.#root);
    const { width, height } = this.#root.getBoundingClientRect();
    const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    this.#slots.resize(width / rem, height / rem);
    this.#root.setAttribute('data-arrangement', known(this.#slots.element.getAttribute('data-arrangement')));
    for (const pane of this.#slots.shown) pane.measure(theme);
    return theme;
  }

  #listenTo(pane: BodePane): void {
    const { element: pad } = pane;
    pad.tabIndex = 0;
    pad.setAttribute('role', 'group');
    pad.setAttribute('aria-label', `Bode plot: ${pane.title}`);
    pad.setAttribute('aria-description', BODE_KEYS);
    const view = this;
    listenToBode(pane, {
      get cursor() {
        return view.#data.cursor;
      },
      setCursor: (cursor, spoken) => this.#setCursor(cursor, spoken),
      notchAt: (frequency) => this.#notchAt(frequency),
      onChange: () => this.#touch(),
    });
  }

  #setCursor(cursor: number | null, spoken: boolean): void {
    const { present, cursor: was } = this.#data;
    if (cursor === was) return;
    this.#message = null;
    this.#become({ cursor });
    if (spoken && cursor !== null && present) setText(this.#spoken, readoutAt(present, cursor));
  }

  /** Says something in the line below the plots, until the cursor moves. */
  #tell(text: string): void {
    this.#message = text;
    setText(this.#readout, text);
    setText(this.#spoken, text);
  }

  #notchAt(frequency: number): void {
    const { present } = this.#data;
    if (!present) return;
    const resonance = resonanceNear(bareResonances(present), frequency);
    if (resonance) this.#shape(notchFor(this.#bench.parameters, resonance), null);
    else
      this.#tell(
        `No resonance without a notch next to ${ranged(frequency, 'Hz')}: no other peak is 2 dB above its surroundings.`,
      );
  }

  #shape(shaping: Shaping, gesture: string | null): void {
    if (typeof shaping === 'string') {
      this.#tell(shaping);
      return;
    }
    const problem = this.#options.change(shaping.changes, shaping.text, gesture);
    this.#become({ cursor: null });
    this.#tell(problem ?? `${shaping.text}${shaping.text.endsWith('.') ? '' : '.'}`);
  }

  #togglePinned(): void {
    this.#become({ pinned: this.#data.pinned ? null : this.#data.present });
    this.#showPinned();
  }

  #showPinned(): void {
    const { pinned, present } = this.#data;
    this.#pin.setAttribute('aria-pressed', String(pinned !== null));
    setText(this.#pin, pinned ? 'Unpin' : 'Pin');
    if (present) this.#figures.show(present.analysis.figures, pinned?.analysis.figures ?? null);
    // The table has become wider or narrower.
    this.resize();
  }

  #begin(kind: LoopExperiment['kind'], sweep: Sweep): string | null {
    const { present } = this.#data;
    if (!present) return 'The loop has not been analysed yet.';
    const scene = presentScene(this.#bench);
    const planned = experimentOf(scene, kind, present.point, sweep);
    if ('problem' in planned) return planned.problem;
    const note = guideNote(scene.parameters, present.point, sweep.sweepForce);
    this.#measure.showProgress(0);
    this.#options.analyst
      .measure(planned.experiment, (share) => this.#measure.showProgress(share))
      .then((loop) => this.#takeMeasured(loop && { loop, kind, analysis: present.analysis }, note))
      .catch((error: unknown) => this.#tell(errorText(error)))
      .finally(() => this.#measure.showProgress(null));
    return null;
  }

  #takeMeasured(measured: Measured | null, note: string | null): void {
    if (!measured) {
      this.#tell('Measuring cancelled.');
      return;
    }
    const { present } = this.#data;
    const { loop, kind } = measured;
    this.#become({
      measured: loop.frequency.length > 0 ? measured : null,
      isStale: present !== null && hasMoved(measured.analysis, present.analysis, loop.frequency),
    });
    const result =
      loop.ended === null
        ? `Measured by ${kind}: ${loop.frequency.length} points, coherence from ${Math.min(...loop.coherence).toFixed(2)} up.`
        : `The measurement ended early. ${loop.ended}`;
    this.#tell([result, note].filter(Boolean).join(' '));
  }
}
