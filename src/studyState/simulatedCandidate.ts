import type { JudgedCandidate } from '../../shared/verdict/judgement.ts';
import type { CandidateState, StudyState } from './state.ts';

/** A candidate with its outcome. */
export type SimulatedCandidate = CandidateState & JudgedCandidate;

export function isSimulated(candidate: CandidateState): candidate is SimulatedCandidate {
  return candidate.outcome !== null;
}

/** Those of a study that can be judged, with no more than a worker needs for it. */
export function judgedCandidates({ candidates }: StudyState): JudgedCandidate[] {
  return candidates.filter(isSimulated).map(({ letter, title, choice, scene, sizing, outcome }) => ({
    letter,
    title,
    choice,
    scene,
    sizing,
    outcome,
  }));
}
