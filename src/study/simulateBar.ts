import { button, element, setText } from '../app/dom.ts';
import type { LaneState, StudyActions, StudyState } from './state.ts';

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
    show({ lanes, isRunning }) {
      const done = lanes.filter(({ outcome }) => outcome !== null).length;
      start.hidden = isRunning || done === lanes.length;
      cancel.hidden = bar.hidden = !isRunning;
      bar.value = lanes.reduce((sum, lane) => sum + shareOf(lane), 0) / lanes.length;
      setText(words, wordsOf(lanes, done));
    },
  };
}

/** Tuning and simulating count as a half each. */
function shareOf({ outcome, progress, choice }: LaneState): number {
  if (outcome) return 1;
  const half = choice.gains ? 0.5 : 0;
  return half + (progress ? progress.share / 2 : 0);
}

function wordsOf(lanes: readonly LaneState[], done: number): string {
  const busy = lanes.filter(({ progress }) => progress !== null);
  if (busy.length > 0) return busy.map(({ letter, progress }) => `${letter}: ${progress!.stage}`).join(' · ');
  if (done === lanes.length) return 'All drives are tuned and simulated.';
  const failed = lanes.filter(({ trouble }) => trouble !== null);
  if (failed.length > 0) return failed.map(({ letter, trouble }) => `${letter}: ${trouble}`).join(' ');
  return done > 0 ? `${done} of ${lanes.length} drives are simulated.` : '';
}
