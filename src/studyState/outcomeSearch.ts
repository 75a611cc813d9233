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
 * Looks once for the outcome of every candidate that is tuned and not simulated, in one place after the other, and hands over what was found
 * of those that have not changed meanwhile: all at one moment, since each change of the store is drawn. A search that fails finds nothing,
 * and the candidate is simulated as any other.
 */
export function lookForOutcomes(store: StudyStore, places: readonly Find[]): void {
  const lookedFor = new WeakSet<CandidateState['scene']>();
  const look = () => {
    const sought = [...store.state.candidates.entries()].filter(
      ([, { outcome, error, scene, choice }]) =>
        outcome === null && error === null && choice.gains !== null && !lookedFor.has(scene),
    );
    if (sought.length === 0) return;
    for (const [, { scene }] of sought) lookedFor.add(scene);
    void lookFor(new Map(sought));
  };
  const lookFor = async (sought: ReadonlyMap<number, CandidateState>) => {
    const { job } = store.state.study;
    store.setSought([...sought.keys()]);
    const results = await Promise.all(
      [...sought].map(async ([index, candidate]) => {
        const known = await firstOf(places, job, candidate);
        return [index, candidate.scene, known] as const;
      }),
    );
    const unchanged = results.filter(([index, scene]) => store.state.candidates[index]?.scene === scene);
    for (const [, , known] of unchanged) if (known) found.add(known);
    store.setFound(new Map(unchanged.map(([index, , known]) => [index, known])));
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
