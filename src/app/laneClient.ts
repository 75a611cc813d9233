import { proxy, wrap } from 'comlink';
import type { Scene } from '../../shared/scene.ts';
import type { Job } from '../../shared/study/job.ts';
import type { LaneCommands, LaneOutcome, LaneProgress } from '../../shared/study/outcome.ts';

/** The evaluation of lanes as the page sees it: every lane in a worker of its own, which ends with it. */
export class LaneClient {
  readonly #cancels = new Set<() => void>();

  /**
   * Resolves to null when cancelled. Several lanes may be evaluated at a time.
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
    let cancel = () => {};
    const cancelled = new Promise<null>((resolve) => {
      cancel = () => resolve(null);
    });
    const broken = new Promise<never>((_, reject) => {
      worker.onerror = (event) => {
        event.preventDefault();
        reject(
          new Error(`The test of a lane stopped: ${event.message || 'its program could not be loaded'}`),
        );
      };
    });
    this.#cancels.add(cancel);
    try {
      const outcome = wrap<LaneCommands>(worker).evaluate(job, scene, proxy(onProgress));
      return await Promise.race([outcome, cancelled, broken]);
    } finally {
      this.#cancels.delete(cancel);
      worker.terminate();
    }
  }

  /** Ends every evaluation under way at once. */
  cancel(): void {
    for (const cancel of this.#cancels) cancel();
  }
}
