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
import { JobPool, type JobWorker } from '../pretune/pool.ts';
import { EFFORTS, pretune } from '../pretune/pretune.ts';
import { serve } from './serve.ts';

/** What one pretuning worker asks of another. */
interface JobDoer {
  doJob(job: Job): JobResult;
}

function behind(port: MessagePort): JobWorker<Job, JobResult> {
  const doer = wrap<JobDoer>(port);
  return { run: (job) => doer.doJob(job) as Promise<JobResult> };
}

/** The pretuning worker: one of several leads the others, which do its jobs. */
serve({
  serve(port: MessagePort): void {
    expose({ doJob } satisfies JobDoer, port);
  },

  async pretune(
    scene: Scene,
    goal: PretuneGoal,
    breadth: PretuneBreadth,
    workers: MessagePort[],
    onProgress: (progress: PretuneProgress) => void,
  ): Promise<PretuneResult> {
    try {
      return await pretune(scene, goal, new JobPool(workers.map(behind)), onProgress, EFFORTS[breadth]);
    } finally {
      for (const port of workers) port.close();
    }
  },
} satisfies PretuneCommands<MessagePort>);
