import type { StudyActions } from '../../studyState/state.ts';
import { button } from '../../ui/dom.ts';

/** Puts comparable drives into the candidates, whatever is in them. */
export function comparableButton(actions: StudyActions): HTMLButtonElement {
  return button('Choose comparable drives', () => actions.chooseCandidates(), {
    title: 'One drive of each kind, all of the smallest class of continuous force that does the job',
  });
}
