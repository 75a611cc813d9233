import { candidateText, runTimeLeft, shareDone } from '../studyState/candidateProgress.ts';
import type { StudyActions, StudyState } from '../studyState/state.ts';
import { button, element, setText } from '../ui/dom.ts';
import { flipProgress } from './parts/verdictProgress.ts';

/** Starts tuning and simulation of all candidates, and says how far they are, or the report that is due. */
export function createSimulateBar(actions: StudyActions): {
  readonly element: HTMLElement;
  show(state: StudyState): void;
} {
  const start = button('Simulate all', () => actions.simulate(), { class: 'primary' });
  const cancel = button('Cancel', () => actions.cancel());
  const bar = element('progress', { max: 1, 'aria-label': 'Progress' });
  const text = element('span', { class: 'simulate-words', role: 'status' });
  return {
    element: element('div', { class: 'simulate-bar' }, start, cancel, bar, text),
    show(state) {
      const { candidates, isRunning, isReportDue, verdict, refused } = state;
      start.disabled = refused.length > 0;
      start.hidden = isRunning || candidates.every(({ outcome, isSought }) => outcome !== null || isSought);
      cancel.hidden = bar.hidden = !isRunning && !isReportDue;
      bar.value = isReportDue ? verdict.share : shareDone(candidates);
      setText(text, `${textOf(state)} ${runTimeLeft(state)}`.trim());
    },
  };
}

function textOf({ candidates, isRunning, isReportDue, verdict, refused }: StudyState): string {
  if (refused.length > 0)
    return `Waiting for a valid entry in ${refused.map((label) => `“${label}”`).join(', ')}.`;
  if (isReportDue) return `Report: ${flipProgress(verdict.share)}`;
  const missing = candidates.filter(({ outcome }) => outcome === null);
  if (missing.length === 0) return 'All drives are tuned and simulated.';
  const told = missing.filter(({ progress, error }) => progress !== null || error !== null);
  if (told.length > 0) return told.map((candidate) => candidateText(candidate, isRunning)).join(' ');
  const done = candidates.length - missing.length;
  return done > 0 ? `${done} of ${candidates.length} drives are simulated.` : '';
}
