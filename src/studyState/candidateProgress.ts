import { inUnit } from '../../shared/core/format.ts';
import type { CandidateState } from './state.ts';

/** How far a candidate is, 0 to 1: tuning and simulating count as a half each. */
export function candidateShare({ outcome, progress, choice }: CandidateState): number {
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
