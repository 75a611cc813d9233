import type { Scene } from '../../shared/core/scene.ts';
import type { Job } from '../../shared/study/job.ts';
import type { CandidateOutcome } from '../../shared/study/outcome.ts';
import { sameScene, sameTests } from './sameSimulation.ts';

interface Found {
  readonly job: Job;
  readonly scene: Scene;
  readonly outcome: CandidateOutcome;
}

/** Outcomes that are remembered: eight studies of four drives. */
const MOST = 32;

/** What simulation found of candidates while the page was open, so that undoing a change brings it back. */
export class FoundOutcomes {
  #found: readonly Found[] = [];

  add(job: Job, scene: Scene, outcome: CandidateOutcome): void {
    this.#found = [{ job, scene, outcome }, ...this.#found].slice(0, MOST);
  }

  /** What was found of this axis under the tests of this job; null: nothing. */
  of(job: Job, scene: Scene): CandidateOutcome | null {
    const found = this.#found.find((each) => sameTests(each.job, job) && sameScene(each.scene, scene));
    return found?.outcome ?? null;
  }
}
