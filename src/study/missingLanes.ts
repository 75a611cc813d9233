import { inUnit } from '../../shared/format.ts';
import { button, element, setText } from '../app/dom.ts';
import type { LaneState, StudyActions, StudyState } from './state.ts';

/** Which lanes have not been simulated yet, how far they are, and the way to do it; gone once all have. */
export function createMissingLanes(actions: StudyActions): {
  readonly element: HTMLElement;
  show(state: StudyState): void;
} {
  const simulate = button('Simulate', () => actions.simulate(), { class: 'primary' });
  const words = element('p', { role: 'status' });
  const bar = element('progress', { max: 1, 'aria-label': 'Progress of the simulation' });
  const box = element('div', { class: 'missing-lanes' }, simulate, bar, words);
  return {
    element: box,
    show({ lanes, isRunning }) {
      const missing = lanes.filter(({ outcome }) => outcome === null);
      const running = missing.filter(({ progress }) => progress !== null);
      box.hidden = missing.length === 0;
      simulate.hidden = isRunning;
      bar.hidden = !isRunning;
      bar.value = (lanes.length - missing.length + sumOfShares(running)) / lanes.length;
      setText(words, missing.map((lane) => missingWords(lane, isRunning)).join(' '));
    },
  };
}

function sumOfShares(lanes: readonly LaneState[]): number {
  return lanes.reduce((sum, { progress }) => sum + (progress?.share ?? 0), 0);
}

/** Why a lane shows nothing: 'B: not simulated yet.' */
export function missingWords({ letter, progress, trouble }: LaneState, isRunning: boolean): string {
  if (progress) return `${letter}: ${progress.stage}, ${inUnit(progress.share, '%', 2)}.`;
  if (trouble !== null) return `${letter}: ${trouble}`;
  return `${letter}: ${isRunning ? 'its turn comes' : 'not simulated yet'}.`;
}
