import { proxy } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type { Job } from '../../shared/study/job.ts';
import type {
  CandidateCommands,
  CandidateOutcome,
  CandidateProgress,
  KnownOutcome,
} from '../../shared/study/outcome.ts';
import { WorkerHost } from './workerHost.ts';

/** Names the build of the model: the script that this stands in names that of the worker, and both change their names with their content. */
export const MODEL_BUILD = import.meta.url;

/** The evaluation of a candidate as the page sees it, in a worker that ends with it. */
export class CandidateClient {
  readonly #evaluation = new WorkerHost<CandidateCommands>('The test of the candidate', spawn);

  /**
   * Null when it was cancelled. One candidate at a time.
   * @throws RangeError when a cycle of the job is too long to be run; WorkerFailure
   */
  evaluate(
    job: Job,
    scene: Scene,
    onProgress: (progress: CandidateProgress) => void,
    known: KnownOutcome | null = null,
  ): Promise<CandidateOutcome | null> {
    return this.#evaluation.runJob((commands, during) =>
      commands.evaluate(job, scene, proxy(during(onProgress)), known),
    );
  }

  cancel(): void {
    this.#evaluation.end();
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/candidateWorker.ts', import.meta.url), { type: 'module' });
}
