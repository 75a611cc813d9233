import type { Job } from '../../shared/study/job.ts';
import type { CandidateOutcome } from '../../shared/study/outcome.ts';
import type { CandidateState } from './state.ts';
import type { StudyStore } from './studyStore.ts';

/** Where an outcome of earlier may be. */
export type Find = (job: Job, candidate: CandidateState) => Promise<CandidateOutcome | null>;

const found = new WeakSet<CandidateOutcome>();

/** Whether an outcome was found, and not simulated on this page. */
export function wasFound(outcome: CandidateOutcome): boolean {
  return found.has(outcome);
}

/**
 * Looks once for the outcome of every candidate that is tuned and not simulated, in one place after the other, and gives it to the candidate
 * if it still is as it was. A search that fails finds nothing: the candidate is simulated as any other.
 */
export function lookForOutcomes(store: StudyStore, places: readonly Find[]): void {
  const lookedFor = new WeakSet<CandidateState['scene']>();
  const look = () => {
    for (const [index, candidate] of store.state.candidates.entries()) {
      const { outcome, error, scene, choice } = candidate;
      if (outcome !== null || error !== null || choice.gains === null || lookedFor.has(scene)) continue;
      lookedFor.add(scene);
      void lookFor(index, candidate);
    }
  };
  const lookFor = async (index: number, candidate: CandidateState) => {
    const { job } = store.state.study;
    store.setSought(index, true);
    const known = await firstOf(places, job, candidate);
    const now = store.state.candidates[index];
    if (now?.scene !== candidate.scene) return;
    if (known && now.outcome === null) {
      found.add(known);
      store.setOutcome(index, known);
    } else store.setSought(index, false);
  };
  store.subscribe(look);
  look();
}

async function firstOf(
  places: readonly Find[],
  job: Job,
  candidate: CandidateState,
): Promise<CandidateOutcome | null> {
  for (const find of places) {
    const known = await find(job, candidate).catch(() => null);
    if (known) return known;
  }
  return null;
}
