import type { Scene } from '../../shared/core/scene.ts';
import type { Job } from '../../shared/study/job.ts';
import type { CandidateOutcome, KnownOutcome } from '../../shared/study/outcome.ts';
import { sameScene, sameTests } from './sameSimulation.ts';

interface Found extends KnownOutcome {
  readonly scene: Scene;
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

  /** The last that was found of this axis, under whichever job; null: nothing. */
  ofAxis(scene: Scene): KnownOutcome | null {
    return this.#found.find((each) => sameScene(each.scene, scene)) ?? null;
  }
}
