import { proxy } from 'comlink';
import type { Job } from '../../shared/study/job.ts';
import type { ConfidenceCommands } from '../../shared/verdict/confidence/commands.ts';
import type { Confidence } from '../../shared/verdict/confidence/confidence.ts';
import type { ConfidenceAsked } from '../../shared/verdict/confidence/findConfidence.ts';
import type { JudgedCandidate } from '../../shared/verdict/judgement.ts';
import { WorkerHost } from './workerHost.ts';

/** With what probability a choice holds, worked out in a worker that ends with it. */
export class ConfidenceClient {
  readonly #host = new WorkerHost<ConfidenceCommands>('The probability of the choice', spawn);

  /**
   * What the draws come to, again and again until all are drawn. Returns whether they were; false when it was cancelled. One under way
   * is cancelled by the next.
   * @throws WorkerFailure
   */
  async confidence(
    job: Job,
    candidates: readonly JudgedCandidate[],
    asked: ConfidenceAsked,
    onFound: (confidence: Confidence) => void,
  ): Promise<boolean> {
    const whole = await this.#host.runJob((commands, during) =>
      commands.confidence(job, candidates, asked, proxy(during(onFound))),
    );
    if (whole) onFound(whole);
    return whole !== null;
  }

  cancel(): void {
    this.#host.end();
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/confidenceWorker.ts', import.meta.url), { type: 'module' });
}
