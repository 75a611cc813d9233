import { expose, wrap } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type {
  PretuneBreadth,
  PretuneCommands,
  PretuneGoal,
  PretuneProgress,
} from '../../shared/protocol/pretune.ts';
import { doJob, type Job, type JobResult } from '../pretune/jobs.ts';
import { JobPool, type JobWorker } from '../pretune/pool.ts';
import { EFFORTS, pretune, tune } from '../pretune/pretune.ts';
import { serve } from './serve.ts';

/** What one pretuning worker asks of another. */
interface JobDoer {
  doJob(job: Job): JobResult;
}

/** What comes of leading the workers behind ports, which are closed after it. */
async function led<Result>(
  ports: readonly MessagePort[],
  lead: (pool: JobPool<Job, JobResult>) => Promise<Result>,
): Promise<Result> {
  try {
    return await lead(new JobPool(ports.map(behind)));
  } finally {
    for (const port of ports) port.close();
  }
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

  pretune(
    scene: Scene,
    goal: PretuneGoal,
    breadth: PretuneBreadth,
    workers: MessagePort[],
    onProgress: (progress: PretuneProgress) => void,
  ) {
    return led(workers, (pool) => pretune(scene, goal, pool, onProgress, EFFORTS[breadth]));
  },

  tune(
    scene: Scene,
    goal: PretuneGoal,
    workers: MessagePort[],
    onProgress: (progress: PretuneProgress) => void,
  ) {
    return led(workers, (pool) => tune(scene, goal, pool, onProgress));
  },
} satisfies PretuneCommands<MessagePort>);
