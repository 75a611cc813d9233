import { proxy } from 'comlink';
import { currentUnit } from '../../shared/core/currentUnit.ts';
import { unitSystem } from '../../shared/core/unitSystem.ts';
import type { Job } from '../../shared/study/job.ts';
import type { Flips, JudgedCandidate, Judgement, VerdictCommands } from '../../shared/verdict/judgement.ts';
import { WorkerHost } from './workerHost.ts';

/** The verdict on a study as the page sees it, in a worker that ends with it. */
export class VerdictClient {
  readonly #verdict = new WorkerHost<VerdictCommands>('The verdict', spawn);

  /**
   * What would change the choice; the judgement itself comes before, to `onJudgement`. Null when it was cancelled. A verdict under
   * way is cancelled by the next. Its sentences are in the units of the reader.
   * @throws WorkerFailure
   */
  async verdict(
    job: Job,
    candidates: readonly JudgedCandidate[],
    onJudgement: (judgement: Judgement) => void,
    onProgress: (share: number) => void,
  ): Promise<Flips | null> {
    const units = { system: unitSystem(), current: currentUnit() };
    let isJudged = false;
    const judged = (judgement: Judgement) => {
      isJudged = true;
      onJudgement(judgement);
    };
    const whole = await this.#verdict.runJob((commands, during) =>
      commands.verdict(job, candidates, units, proxy(during(judged)), proxy(during(onProgress))),
    );
    if (whole && !isJudged) onJudgement(whole.judgement);
    return whole?.flips ?? null;
  }

  cancel(): void {
    this.#verdict.end();
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/verdictWorker.ts', import.meta.url), { type: 'module' });
}
