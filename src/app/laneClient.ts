import { proxy, wrap } from 'comlink';
import type { Scene } from '../../shared/scene.ts';
import type { Job } from '../../shared/study/job.ts';
import type { LaneCommands, LaneOutcome, LaneProgress } from '../../shared/study/outcome.ts';
import { workerFailure } from './workerFailure.ts';

/** The evaluation of a lane as the page sees it, in a worker of its own that ends with it. */
export class LaneClient {
  #cancel = () => {};

  /**
   * Resolves to null when cancelled. One lane at a time.
   * @throws RangeError when a cycle of the job is too long to be run
   */
  async evaluate(
    job: Job,
    scene: Scene,
    onProgress: (progress: LaneProgress) => void,
  ): Promise<LaneOutcome | null> {
    const worker = new Worker(new URL('../../workers/entry/laneWorker.ts', import.meta.url), {
      type: 'module',
    });
    const broken = workerFailure(worker, 'The test of a lane');
    const cancelled = new Promise<null>((resolve) => {
      this.#cancel = () => resolve(null);
    });
    try {
      const outcome = wrap<LaneCommands>(worker).evaluate(job, scene, proxy(onProgress));
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
