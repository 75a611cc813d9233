import { expose, wrap } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type {
  PretuneBreadth,
  PretuneCommands,
  PretuneGoal,
  PretuneProgress,
  PretuneResult,
} from '../../shared/protocol/pretune.ts';
import { doJob, type Job, type JobResult } from '../pretune/jobs.ts';
import { CancelledError, JobPool, type JobWorker } from '../pretune/pool.ts';
import { EFFORTS, pretune } from '../pretune/pretune.ts';

/** What one pretuning worker asks of another. */
interface JobDoer {
  doJob(job: Job): JobResult;
}

/** Does a job in this thread, after whatever messages wait, so that it can be cancelled between jobs. */
const inThisThread: JobWorker<Job, JobResult> = {
  run: (job) =>
    new Promise((resolve, reject) => {
      setTimeout(() => {
        try {
          resolve(doJob(job));
        } catch (error) {
          reject(error);
        }
      });
    }),
};

function behind(port: MessagePort): JobWorker<Job, JobResult> {
  const doer = wrap<JobDoer>(port);
  return { run: (job) => doer.doJob(job) as Promise<JobResult> };
}

/** One of the pretuning workers: leads the others, or does jobs for the one that leads. */
class PretuneWorker implements PretuneCommands<MessagePort> {
  private pool: JobPool<Job, JobResult> | null = null;

  serve(port: MessagePort): void {
    expose({ doJob } satisfies JobDoer, port);
  }

  async pretune(
    scene: Scene,
    goal: PretuneGoal,
    breadth: PretuneBreadth,
    workers: MessagePort[],
    onProgress: (progress: PretuneProgress) => void,
  ): Promise<PretuneResult | null> {
    this.cancel();
    const pool = new JobPool(workers.length > 0 ? workers.map(behind) : [inThisThread]);
    this.pool = pool;
    try {
      return await pretune(scene, goal, pool, onProgress, EFFORTS[breadth]);
    } catch (error) {
      if (error instanceof CancelledError) return null;
      throw error;
    } finally {
      for (const port of workers) port.close();
    }
  }

  cancel(): void {
    this.pool?.cancel();
    this.pool = null;
  }
}

expose(new PretuneWorker());
