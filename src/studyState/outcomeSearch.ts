import type { Job } from '../../shared/study/job.ts';
import type { CandidateOutcome } from '../../shared/study/outcome.ts';
import type { CandidateState } from './state.ts';
import type { StudyStore } from './studyStore.ts';

type Find = (job: Job, candidate: CandidateState) => Promise<CandidateOutcome | null>;

const found = new WeakSet<CandidateOutcome>();

/** Whether an outcome was found, and not simulated on this page. */
export function wasFound(outcome: CandidateOutcome): boolean {
  return found.has(outcome);
}

/**
 * Looks once for the outcome of every candidate that is tuned and not simulated, and gives it to the candidate if it still is as it was.
 * A search that fails finds nothing: the candidate is simulated as any other.
 */
export function lookForOutcomes(store: StudyStore, find: Find): void {
  const lookedFor = new WeakSet<CandidateState['scene']>();
  const look = () => {
    const { study, candidates } = store.state;
    candidates.forEach((candidate, index) => {
      const { outcome, error, scene, choice } = candidate;
      if (outcome !== null || error !== null || choice.gains === null || lookedFor.has(scene)) return;
      lookedFor.add(scene);
      void find(study.job, candidate)
        .then((known) => {
          const now = store.state.candidates[index];
          if (!known || now?.scene !== scene || now.outcome !== null) return;
          found.add(known);
          store.setOutcome(index, known);
        })
        .catch(() => {});
    });
  };
  store.subscribe(look);
  look();
}
