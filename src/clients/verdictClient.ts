import { proxy } from 'comlink';
import type { Job } from '../../shared/study/job.ts';
import type { Flips, JudgedCandidate, Judgement, VerdictCommands } from '../../shared/verdict/judgement.ts';
import { WorkerHost } from './workerHost.ts';

/** The verdict on a study as the page sees it, in a worker that ends with it. */
export class VerdictClient {
  readonly #verdict = new WorkerHost<VerdictCommands>('The verdict', spawn);

  /**
   * What would change the choice; the judgement itself comes before, to `onJudgement`. Null when it was cancelled. A verdict under
   * way is cancelled by the next.
   * @throws WorkerFailure
   */
  verdict(
    job: Job,
    candidates: readonly JudgedCandidate[],
    onJudgement: (judgement: Judgement) => void,
    onProgress: (share: number) => void,
  ): Promise<Flips | null> {
    return this.#verdict.runJob((commands) =>
      commands.verdict(job, candidates, proxy(onJudgement), proxy(onProgress)),
    );
  }

  cancel(): void {
    this.#verdict.end();
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/verdictWorker.ts', import.meta.url), { type: 'module' });
}
