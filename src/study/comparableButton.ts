import { button } from '../app/dom.ts';
import type { StudyActions } from './state.ts';

/** Puts comparable drives into the lanes, whatever is in them. */
export function comparableButton(actions: StudyActions): HTMLButtonElement {
  return button('Choose comparable drives', () => actions.chooseLanes(), {
    title: 'One drive of each kind, all of the smallest class of continuous force that does the job',
  });
}
