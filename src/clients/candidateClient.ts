import { proxy, wrap } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type { Job } from '../../shared/study/job.ts';
import type { CandidateCommands, CandidateOutcome, CandidateProgress } from '../../shared/study/outcome.ts';
import { workerFailure } from './workerFailure.ts';

/** The evaluation of a candidate as the page sees it, in a worker of its own that ends with it. */
export class CandidateClient {
  #cancel = () => {};

  /**
   * Resolves to null when cancelled. One candidate at a time.
   * @throws RangeError when a cycle of the job is too long to be run
   */
  async evaluate(
    job: Job,
    scene: Scene,
    onProgress: (progress: CandidateProgress) => void,
  ): Promise<CandidateOutcome | null> {
    const worker = new Worker(new URL('../../workers/entry/candidateWorker.ts', import.meta.url), {
      type: 'module',
    });
    const broken = workerFailure(worker, 'The test of a candidate');
    const cancelled = new Promise<null>((resolve) => {
      this.#cancel = () => resolve(null);
    });
    try {
      const outcome = wrap<CandidateCommands>(worker).evaluate(job, scene, proxy(onProgress));
      return await Promise.race([outcome, cancelled, broken]);
    } finally {
      worker.terminate();
    }
  }

  /** Ends the evaluation under way at once. */
  cancel(): void {
    this.#cancel();
  }
}
