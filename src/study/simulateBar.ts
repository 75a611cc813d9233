import { sentence } from '../../shared/verdict/text.ts';
import { candidateShare, candidateText } from '../studyState/candidateProgress.ts';
import type { StudyActions, StudyState } from '../studyState/state.ts';
import { button, element, setText } from '../ui/dom.ts';
import { timeLeftText } from '../ui/timeLeft.ts';
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
  /** When the run began, ms, and what was done then: nothing of it took any of its time. */
  let begun: { readonly at: number; readonly done: number } | null = null;
  return {
    element: element('div', { class: 'simulate-bar' }, start, cancel, bar, text),
    show(state) {
      const { candidates, isRunning, isReportDue, verdict, refused } = state;
      start.disabled = refused.length > 0;
      start.hidden = isRunning || candidates.every(({ outcome }) => outcome !== null);
      cancel.hidden = bar.hidden = !isRunning && !isReportDue;
      const done =
        candidates.reduce((sum, candidate) => sum + candidateShare(candidate), 0) / candidates.length;
      bar.value = isReportDue ? verdict.share : done;
      if (!isRunning) begun = null;
      else begun ??= { at: performance.now(), done };
      const left = begun
        ? sentence(timeLeftText(done - begun.done, 1 - begun.done, (performance.now() - begun.at) / 1000))
        : '';
      setText(text, `${textOf(state)} ${left}`.trim());
    },
  };
}

function textOf({ candidates, isRunning, isReportDue, verdict, refused }: StudyState): string {
  if (refused.length > 0)
    return `Waits for ${refused.map((label) => `“${label}”`).join(', ')}: what was entered there is refused.`;
  if (isReportDue) return `Report: ${flipProgress(verdict.share)}`;
  const missing = candidates.filter(({ outcome }) => outcome === null);
  if (missing.length === 0) return 'All drives are tuned and simulated.';
  const told = missing.filter(({ progress, error }) => progress !== null || error !== null);
  if (told.length > 0) return told.map((candidate) => candidateText(candidate, isRunning)).join(' ');
  const done = candidates.length - missing.length;
  return done > 0 ? `${done} of ${candidates.length} drives are simulated.` : '';
}
