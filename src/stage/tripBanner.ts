import { tripText } from '../../shared/figures/tripText.ts';
import type { Trip } from '../../shared/protocol/axis.ts';
import { button, element, setHidden, setText } from '../ui/dom.ts';

/** What to do about each kind of trip, for a practitioner. Common practice, no source. */
const ADVICE: Record<Trip['kind'], string> = {
  'following error':
    'Check the gains first: a loop that is too soft lags, one that is too stiff oscillates. Then lower acceleration or load, or raise the following-error limit.',
  'over-travel':
    'Make the stroke fit the travel, or remove what pushes the table out: a hand, a process force, a runaway loop.',
  'over-temperature':
    'Let it cool: longer dwell, lower acceleration, less payload, or better cooling. Reset starts at the temperatures of the scene.',
  oscillation: 'Lower the gains, or set a notch at the ringing frequency.',
  'over-speed': 'Lower the commanded speed or the step; an oscillating or runaway loop ends here as well.',
  divergence: 'The loop is unstable. Lower the gains or the integral action, or undo the last change.',
};

const PULLED = 'Pull more gently, or raise the following-error limit.';
const UNDRIVEN = 'The gains are not the cause. Undo the last change to the machine.';

function adviceOn(trip: Trip): string {
  if (trip.kind === 'following error' && trip.pulled) return PULLED;
  return trip.kind === 'divergence' && trip.undriven ? UNDRIVEN : ADVICE[trip.kind];
}

/** Above the stage while the drive has tripped: why, when, what to do, and the way on. */
export class TripBanner {
  readonly element: HTMLElement;
  readonly #title = element('h2');
  readonly #reason = element('p', { class: 'trip-reason' });
  readonly #advice = element('p');
  readonly #undo: HTMLButtonElement;
  #shown: Trip | null = null;

  constructor(onReset: () => void, onUndo: () => void) {
    this.#undo = button('Undo last change', onUndo);
    this.element = element(
      'section',
      { class: 'trip', hidden: true, 'aria-label': 'Trip' },
      element('div', { class: 'trip-words' }, this.#title, this.#reason, this.#advice),
      element('div', { class: 'trip-ways' }, button('Reset', onReset, { class: 'primary' }), this.#undo),
    );
  }

  /** Whether there is a change that could be taken back. */
  offerUndo(possible: boolean): void {
    setHidden(this.#undo, !possible);
  }

  /** Returns what to say when a trip has just come. */
  show(trip: Trip | null): string | null {
    const isNew = trip !== null && trip.time !== this.#shown?.time;
    this.#shown = trip;
    setHidden(this.element, trip === null);
    if (!isNew) return null;
    const advice = adviceOn(trip);
    setText(this.#title, `The drive tripped at ${trip.time.toFixed(3)} s`);
    const why = tripText(trip);
    setText(this.#reason, why);
    setText(this.#advice, advice);
    return `The drive tripped. ${why} ${advice}`;
  }
}
