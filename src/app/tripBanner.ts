import type { Trip } from '../../shared/protocol/axis.ts';
import { button, element, setText } from '../ui/dom.ts';

/** What to do about each kind of trip, for a practitioner. Common practice, no source. */
const ADVICE: Record<Trip['kind'], string> = {
  'following error':
    'Check the gains first: too soft they lag behind, too stiff they swing. Then lower acceleration or load, or allow more following error.',
  'over-travel':
    'Make the stroke fit the travel, or stop what pushes the table out: a hand, a process force, a loop that runs away.',
  'over-temperature':
    'Let it cool: longer dwell, lower acceleration, less payload, or better cooling. A reset starts at the temperatures of the scene.',
  oscillation: 'Lower the gains, or set a notch where the loop rings.',
  'over-speed': 'Lower the commanded speed or the step; a loop that swings up or runs away ends here too.',
  divergence: 'The loop is unstable. Lower the gains or the integral part, or undo the last change.',
};

export interface TripBanner {
  readonly element: HTMLElement;
  /** Returns what to say when a trip has just come. */
  show(trip: Trip | null): string | null;
  /** Whether there is a change that could be taken back. */
  offerUndo(possible: boolean): void;
}

/** Over the stage while the drive has tripped: why, when, what to do, and the way on. */
export function createTripBanner(reset: () => void, undo: () => void): TripBanner {
  const title = element('h2');
  const reason = element('p', { class: 'trip-reason' });
  const advice = element('p');
  const undoButton = button('Undo last change', undo);
  const banner = element(
    'section',
    { class: 'trip', hidden: true, 'aria-label': 'Trip' },
    title,
    reason,
    advice,
    element('div', { class: 'trip-ways' }, button('Reset', reset, { class: 'primary' }), undoButton),
  );
  let shown: Trip | null = null;
  return {
    element: banner,
    offerUndo(possible) {
      undoButton.hidden = !possible;
    },
    show(trip) {
      const isNew = trip !== null && trip.time !== shown?.time;
      shown = trip;
      banner.hidden = trip === null;
      if (!trip || !isNew) return null;
      setText(title, `The drive tripped at ${trip.time.toFixed(3)} s`);
      setText(reason, trip.message);
      setText(advice, ADVICE[trip.kind]);
      return `The drive tripped. ${trip.message} ${ADVICE[trip.kind]}`;
    },
  };
}
