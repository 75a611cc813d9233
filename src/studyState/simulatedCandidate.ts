import type { JudgedCandidate } from '../../shared/verdict/judgement.ts';
import type { CandidateState } from './state.ts';

/** A candidate with its outcome. */
export type SimulatedCandidate = CandidateState & JudgedCandidate;

export function isSimulated(candidate: CandidateState): candidate is SimulatedCandidate {
  return candidate.outcome !== null;
}
