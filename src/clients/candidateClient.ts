import { proxy, type Remote } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type { Job } from '../../shared/study/job.ts';
import {
  type CandidateCommands,
  type CandidateOutcome,
  type CandidateProgress,
  joinedOutcome,
  type KnownOutcome,
} from '../../shared/study/outcome.ts';
import { workerCount } from './workerCount.ts';
import { underWay, WorkerEnded, type WorkerHost } from './workerHost.ts';
import { WorkerPool } from './workerPool.ts';

/** Names the build of the model: the script that this stands in names that of the worker, and both change their names with their content. */
export const MODEL_BUILD = import.meta.url;

/** The work, as messages name it. */
const WHAT = 'The test of the candidate';

/** Two for each candidate of a study. */
const MAX_WORKERS = 8;

type CandidatePool = WorkerPool<CandidateCommands>;

/** A candidate under way, with the workers that are busy with it. */
class Evaluation {
  isOver = false;
  readonly busy = new Set<WorkerHost<CandidateCommands>>();
  /** Rejects as soon as it is ended, whatever still waits for a worker. */
  readonly cancelled: Promise<never>;
  #cancel: (reason: Error) => void = () => {};

  constructor() {
    this.cancelled = new Promise((_, reject) => {
      this.#cancel = reject;
    });
    this.cancelled.catch(() => {});
  }

  /** Its workers at once; a half that waits for one is not begun. */
  end(): void {
    this.isOver = true;
    for (const host of this.busy) host.end();
    this.#cancel(new WorkerEnded(WHAT));
  }
}

/** Workers for the candidates of a study. */
export function candidatePool(): CandidatePool {
  return new WorkerPool<CandidateCommands>(WHAT, spawn, workerCount(MAX_WORKERS));
}

/** The evaluation of a candidate as the page sees it: two workers of a pool share it. */
export class CandidateClient {
  readonly #pool: CandidatePool;
  #evaluation: Evaluation | null = null;

  constructor(pool: CandidatePool) {
    this.#pool = pool;
  }

  /**
   * Null when it was cancelled. One candidate at a time.
   * @throws RangeError when a cycle of the job is too long to be run; WorkerFailure
   */
  async evaluate(
    job: Job,
    scene: Scene,
    onProgress: (progress: CandidateProgress) => void,
    known: KnownOutcome | null = null,
  ): Promise<CandidateOutcome | null> {
    const evaluation = new Evaluation();
    this.#evaluation = evaluation;
    const { during, end } = underWay();
    const shares = { day: 0, cold: 0 };
    const heard = (half: keyof typeof shares) =>
      proxy(
        during(({ stage, share }: CandidateProgress) => {
          shares[half] = share;
          // While the other half goes on, that is what is under way.
          if (share < 1) onProgress({ stage, share: (shares.day + shares.cold) / 2 });
        }),
      );
    try {
      const halves = Promise.all([
        this.#ask(evaluation, (commands) => commands.evaluateDay(job, scene, heard('day'), known)),
        this.#ask(evaluation, (commands) => commands.evaluateCold(job, scene, heard('cold'), known)),
      ]);
      const [day, cold] = await Promise.race([halves, evaluation.cancelled]);
      return joinedOutcome(day, cold);
    } catch (error) {
      // What is left of the other half is of no use.
      evaluation.end();
      if (error instanceof WorkerEnded) return null;
      throw error;
    } finally {
      end();
    }
  }

  cancel(): void {
    this.#evaluation?.end();
  }

  #ask<Half>(
    evaluation: Evaluation,
    command: (commands: Remote<CandidateCommands>) => Promise<Half>,
  ): Promise<Half> {
    return this.#pool.use(async (host) => {
      if (evaluation.isOver) throw new WorkerEnded(WHAT);
      evaluation.busy.add(host);
      try {
        return await host.ask(command);
      } finally {
        evaluation.busy.delete(host);
      }
    });
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/candidateWorker.ts', import.meta.url), { type: 'module' });
}
