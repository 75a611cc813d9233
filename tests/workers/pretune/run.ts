import type { Scene } from '../../../shared/core/scene.ts';
import type { PretuneGoal, PretuneProgress, PretuneResult } from '../../../shared/protocol/pretune.ts';
import { doJob, type Job, type JobResult } from '../../../workers/pretune/jobs.ts';
import { JobPool, type JobWorker } from '../../../workers/pretune/pool.ts';
import { type PretuneEffort, pretune } from '../../../workers/pretune/pretune.ts';

/** The page's way with fewer trials: the code is the same. */
export const LIGHT: PretuneEffort = {
  trials: 60,
  wanted: { rounds: 1, trimmed: 2 },
  sensitivities: [],
  finalists: 1,
};

/** Does jobs in this thread. */
export const here: JobWorker<Job, JobResult> = { run: async (job) => doJob(job) };

export function pretuned(
  scene: Scene,
  goal: PretuneGoal,
  workers: readonly JobWorker<Job, JobResult>[] = [here],
  effort: PretuneEffort = LIGHT,
  onProgress: (progress: PretuneProgress) => void = () => {},
): Promise<PretuneResult> {
  return pretune(scene, goal, new JobPool(workers), onProgress, effort);
}
