import type { StudyState } from '../../studyState/state.ts';
import { element, setText } from '../../ui/dom.ts';

/** Says that what is shown belongs to the job before an entry that was refused; gone once the job is what its fields say. */
export function createOlderJobNote(): {
  readonly element: HTMLElement;
  show(state: StudyState): void;
} {
  const note = element('p', { class: 'older-job', role: 'status', hidden: true });
  return {
    element: note,
    show({ refused }) {
      note.hidden = refused.length === 0;
      setText(note, olderJobText(refused));
    },
  };
}

function olderJobText(refused: readonly string[]): string {
  if (refused.length === 0) return '';
  const [verb, which] = refused.length === 1 ? ['was', 'it'] : ['were', 'them'];
  return `These figures are for an earlier state of the job: ${refused.map((label) => `“${label}”`).join(', ')} ${verb} refused. Correct ${which} under Job.`;
}
