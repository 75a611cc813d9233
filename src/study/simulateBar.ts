import { button, element, setText } from '../app/dom.ts';
import { laneShare, laneWords } from './laneProgress.ts';
import type { StudyActions, StudyState } from './state.ts';

/** Starts tuning and simulation of all lanes, and says how far they are. */
export function createSimulateBar(actions: StudyActions): {
  readonly element: HTMLElement;
  show(state: StudyState): void;
} {
  const start = button('Simulate all', () => actions.simulate(), { class: 'primary' });
  const cancel = button('Cancel', () => actions.cancel());
  const bar = element('progress', { max: 1, 'aria-label': 'Progress of the simulation' });
  const words = element('span', { class: 'simulate-words', role: 'status' });
  return {
    element: element('div', { class: 'simulate-bar' }, start, cancel, bar, words),
    show(state) {
      const { lanes, isRunning } = state;
      start.hidden = isRunning || lanes.every(({ outcome }) => outcome !== null);
      cancel.hidden = bar.hidden = !isRunning;
      bar.value = lanes.reduce((sum, lane) => sum + laneShare(lane), 0) / lanes.length;
      setText(words, wordsOf(state));
    },
  };
}

function wordsOf({ lanes, isRunning }: StudyState): string {
  const missing = lanes.filter(({ outcome }) => outcome === null);
  if (missing.length === 0) return 'All drives are tuned and simulated.';
  const told = missing.filter(({ progress, trouble }) => progress !== null || trouble !== null);
  if (told.length > 0) return told.map((lane) => laneWords(lane, isRunning)).join(' ');
  const done = lanes.length - missing.length;
  return done > 0 ? `${done} of ${lanes.length} drives are simulated.` : '';
}
