import { DEFAULT_STUDY } from '../../scenes/defaultStudy.ts';
import { PRESETS } from '../../scenes/index.ts';
import type { CandidateChoice } from '../../shared/study/candidate.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import type { Job, JobValues } from '../../shared/study/job.ts';
import type { CandidateOutcome } from '../../shared/study/outcome.ts';
import { sameScene, sameTests } from './sameSimulation.ts';
import type { CandidateState } from './state.ts';
import type { StudyStore } from './studyStore.ts';

/** The example with what simulation found of it, as it is recorded with the product. */
export interface SimulatedStudy {
  /** As it was when it was simulated; entries that are newer were open then. */
  readonly job: Pick<Job, 'title' | 'moves'> & { readonly values: Partial<JobValues> };
  readonly candidates: readonly { readonly choice: CandidateChoice; readonly outcome: CandidateOutcome }[];
}

/**
 * Gives every candidate that is as one of the example, which was simulated beforehand, the results of that: a study that opens with the
 * page opens with its answer. `load` is asked once, when there is such a candidate.
 */
export function showShippedResults(store: StudyStore, load: () => Promise<SimulatedStudy>): void {
  let loading: Promise<SimulatedStudy> | null = null;
  const lookedFor = new WeakSet<CandidateState['scene']>();
  const look = () =>
    store.state.candidates.forEach(({ choice, outcome, scene }, index) => {
      if (outcome !== null || choice.gains === null || lookedFor.has(scene)) return;
      lookedFor.add(scene);
      loading ??= load();
      void loading.then(
        (simulated) => {
          const { study, candidates } = store.state;
          const now = candidates[index];
          if (now?.scene !== scene || now.outcome !== null || !sameTests(DEFAULT_STUDY.job, study.job))
            return;
          const found = simulated.candidates.find((each) =>
            sameScene(candidateScene(DEFAULT_STUDY.job, each.choice, PRESETS), scene),
          );
          if (found) store.setOutcome(index, found.outcome);
          // Without them the study is simulated as any other.
        },
        () => {},
      );
    });
  store.subscribe(look);
  look();
}
