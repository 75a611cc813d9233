import { inUnit } from '../../shared/core/format.ts';
import { sentence } from '../../shared/verdict/text.ts';
import { timeLeftText } from '../ui/timeLeft.ts';
import type { CandidateState, StudyState } from './state.ts';

/** How far all candidates are together, 0 to 1. */
export function shareDone(candidates: readonly CandidateState[]): number {
  return candidates.reduce((sum, candidate) => sum + candidateShare(candidate), 0) / candidates.length;
}

/** How long the run still takes at its pace so far, as a sentence; nothing while there is none. */
export function runTimeLeft({ candidates, begun }: StudyState): string {
  if (begun === null) return '';
  const done = shareDone(candidates) - begun.done;
  return sentence(timeLeftText(done, 1 - begun.done, (performance.now() - begun.at) / 1000));
}

/** How far a candidate is, 0 to 1: tuning and simulating count as a half each. */
function candidateShare({ outcome, progress, choice }: CandidateState): number {
  if (outcome) return 1;
  const half = choice.gains ? 0.5 : 0;
  return half + (progress ? progress.share / 2 : 0);
}

/** How far a candidate without an outcome is, or why it has none: 'B: Positioning, cold, 45 %.' */
export function candidateText({ letter, progress, error }: CandidateState, isRunning: boolean): string {
  if (progress) return `${letter}: ${progress.stage}, ${inUnit(progress.share, '%', 2)}.`;
  if (error !== null) return `${letter}: ${error}`;
  return `${letter}: ${isRunning ? 'waiting' : 'not simulated yet'}.`;
}
