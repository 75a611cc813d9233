import { valueAt } from '../../shared/core/at.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import { Reading } from '../gauges/reading.ts';
import type { Span } from '../plot/strip/columnBuffer.ts';
import type { LensRange } from '../stage/lens/lensRange.ts';
import { Magnifier, SPAN } from '../stage/lens/magnifier.ts';
import { button, element, setText } from '../ui/dom.ts';
import { NumberClock } from '../ui/timing/numberClock.ts';
import type { Candidate } from './candidate.ts';
import { candidateGauges } from './candidateGauges.ts';
import { candidateLetterMark } from './candidateName.ts';
import { ErrorStrip } from './errorStrip.ts';

/** Samples from which the afterglow of the lens is put together for a moment of the past. */
const RECALLED = 120;

/** What is known of a candidate by its name. */
export interface CandidateName {
  readonly letter: string;
  readonly title: string;
  /** Pretuned, or with start gains. */
  readonly tuned: boolean;
}

/** One candidate in a card: its magnifier, its gauges and its error over the last moves. */
export class CandidateCard {
  readonly candidate: Candidate;
  readonly #letter = candidateLetterMark();
  readonly #title = element('h2', { class: 'candidate-title' });
  readonly #bench: HTMLButtonElement;
  readonly #untuned = element('p', { class: 'candidate-untuned' }, 'not tuned yet: start gains');
  readonly #fault = element('p', { class: 'candidate-fault', hidden: true });
  readonly #lens = new Magnifier();
  readonly #gauges = candidateGauges();
  readonly strip = new ErrorStrip();
  readonly element: HTMLElement;
  readonly #numbers = new NumberClock();
  #version = Number.NaN;
  #time = Number.NaN;
  readonly #lows = new Float64Array(RECALLED);
  readonly #highs = new Float64Array(RECALLED);

  constructor(candidate: Candidate, onBench: () => void) {
    this.candidate = candidate;
    this.#bench = button('Bench', onBench, { class: 'candidate-bench' });
    this.element = element(
      'section',
      { class: 'candidate-card' },
      this.#lens.element,
      element('header', { class: 'candidate-head' }, this.#letter, this.#title, this.#bench),
      element(
        'div',
        { class: 'candidate-gauges' },
        this.#untuned,
        ...this.#gauges.map((gauge) => gauge.element),
      ),
      element('div', { class: 'candidate-side' }, this.strip.element, this.#fault),
    );
  }

  name({ letter, title, tuned }: CandidateName): void {
    setText(this.#letter, letter);
    setText(this.#title, title);
    this.#title.title = title;
    this.#untuned.hidden = tuned;
    this.#bench.title = `Put the axis of candidate ${letter} on the bench`;
    this.#bench.setAttribute('aria-label', this.#bench.title);
    this.element.setAttribute('aria-label', `Candidate ${letter}: ${title}`);
  }

  /** After a change of size, theme or text size. */
  restyle(): void {
    this.#lens.restyle();
    this.strip.restyle();
    this.#version = Number.NaN;
  }

  /** Takes in what the candidate shows. Returns the largest following error that the lens has to hold, m. */
  take(): number {
    return this.#lens.take(this.candidate.shown, this.candidate.history);
  }

  /** Another moment is looked at, s: the afterglow becomes what went before it. */
  recall(moment: number): void {
    const from = moment - SPAN;
    this.candidate.history.columns('followingError', from, moment, RECALLED, this.#lows, this.#highs);
    for (let k = 0; k < RECALLED; k++) {
      const error = (valueAt(this.#lows, k) + valueAt(this.#highs, k)) / 2;
      if (!Number.isNaN(error)) this.#lens.remember(from + ((k + 0.5) / RECALLED) * SPAN, error);
    }
  }

  /** Once per display refresh, `elapsed` seconds after the last; `range` is that of all lenses, or null. */
  draw(moment: number, elapsed: number, range: LensRange | null): void {
    const { candidate } = this;
    const writes = this.#numbers.refresh(elapsed);
    this.#lens.draw(candidate.shown, candidate.parameters, elapsed, Number.NaN, writes, range);
    if (!writes) return;
    if (this.#version === candidate.history.version && this.#time === moment) return;
    this.#version = candidate.history.version;
    this.#time = moment;
    this.#write(moment);
  }

  /** Reads the window of the strip; whether there is one to be drawn. */
  readStrip(window: (columns: number) => Span): boolean {
    return this.strip.read(this.candidate.history, window);
  }

  #write(moment: number): void {
    const { candidate } = this;
    const reading = new Reading(candidate.shown, candidate.parameters, candidate.history, {
      time: Math.min(moment, candidate.time),
      lastMove: candidate.lastMove(moment),
    });
    for (const gauge of this.#gauges) {
      gauge.move(reading);
      gauge.write(reading);
    }
    const isStopped = candidate.isStoppedAt(moment);
    setText(this.#fault, isStopped ? faultOf(candidate) : '');
    this.#fault.hidden = !isStopped;
    this.strip.element.hidden = isStopped;
  }
}

/** Why a candidate stands still. */
function faultOf({ error, trip }: Candidate): string {
  if (error !== null) return `The simulation stopped: ${error}`;
  return trip ? `Tripped at ${trip.time.toFixed(3)} s. ${tripText(trip)}` : '';
}
