import { DEFAULT_STUDY } from '../../scenes/defaultStudy.ts';
import { PRESETS } from '../../scenes/index.ts';
import type { CandidateChoice } from '../../shared/study/candidate.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import type { Job, JobValues } from '../../shared/study/job.ts';
import type { CandidateOutcome } from '../../shared/study/outcome.ts';
import type { Find } from './outcomeSearch.ts';
import { sameScene, sameTests } from './sameSimulation.ts';

/** The example with what simulation found of it, as it is recorded with the product. */
export interface SimulatedStudy {
  /** As it was when it was simulated; entries that are newer were open then. */
  readonly job: Pick<Job, 'title' | 'moves'> & { readonly values: Partial<JobValues> };
  readonly candidates: readonly { readonly choice: CandidateChoice; readonly outcome: CandidateOutcome }[];
}

/**
 * Finds the recorded results of a candidate that matches one of the example, so that the study the page opens with has its answer at once.
 * `load` is called once, when there is such a candidate.
 */
export function findShipped(load: () => Promise<SimulatedStudy>): Find {
  let loading: Promise<SimulatedStudy> | null = null;
  return async (job, { scene }) => {
    if (!sameTests(DEFAULT_STUDY.job, job)) return null;
    loading ??= load();
    const { candidates } = await loading;
    const same = candidates.find(({ choice }) =>
      sameScene(candidateScene(DEFAULT_STUDY.job, choice, PRESETS), scene),
    );
    return same?.outcome ?? null;
  };
}
