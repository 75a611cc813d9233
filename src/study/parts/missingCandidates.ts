import { candidateText, runTimeLeft } from '../../studyState/candidateProgress.ts';
import type { StudyActions, StudyState } from '../../studyState/state.ts';
import { button, element, setText } from '../../ui/dom.ts';

/** Which candidates a part of the study does not show, since they are not simulated, and the way to do it; gone once all are. */
export function createMissingCandidates(actions: StudyActions): {
  readonly element: HTMLElement;
  show(state: StudyState): void;
} {
  const simulate = button('Simulate all', () => actions.simulate(), { class: 'primary' });
  const text = element('p', { role: 'status' });
  const box = element('div', { class: 'missing-candidates' }, simulate, text);
  return {
    element: box,
    show(state) {
      const { candidates, isRunning } = state;
      const missing = candidates.filter(({ outcome }) => outcome === null);
      box.hidden = missing.length === 0;
      simulate.hidden = isRunning;
      const each = missing.map((candidate) => candidateText(candidate, isRunning));
      setText(text, [...each, runTimeLeft(state)].join(' ').trim());
    },
  };
}
