import { button, element, setText } from '../app/dom.ts';
import { laneWords } from './laneProgress.ts';
import type { StudyActions, StudyState } from './state.ts';

/** Which lanes a part of the study does not show, since they are not simulated, and the way to do it; gone once all are. */
export function createMissingLanes(actions: StudyActions): {
  readonly element: HTMLElement;
  show(state: StudyState): void;
} {
  const simulate = button('Simulate all', () => actions.simulate(), { class: 'primary' });
  const words = element('p', { role: 'status' });
  const box = element('div', { class: 'missing-lanes' }, simulate, words);
  return {
    element: box,
    show({ lanes, isRunning }) {
      const missing = lanes.filter(({ outcome }) => outcome === null);
      box.hidden = missing.length === 0;
      simulate.hidden = isRunning;
      setText(words, missing.map((lane) => laneWords(lane, isRunning)).join(' '));
    },
  };
}
