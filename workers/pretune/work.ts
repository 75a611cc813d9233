import type { PretuneProgress } from '../../shared/protocol/pretune.ts';
import type { Job, JobResult } from './jobs.ts';
import type { JobPool } from './pool.ts';

/** Counts the jobs of one pretuning. */
export class Work {
  #stage = '';
  #done = 0;
  readonly #pool: JobPool<Job, JobResult>;
  readonly #total: number;
  readonly #onProgress: (progress: PretuneProgress) => void;

  /** @param total number of jobs to come */
  constructor(pool: JobPool<Job, JobResult>, total: number, onProgress: (progress: PretuneProgress) => void) {
    this.#pool = pool;
    this.#total = total;
    this.#onProgress = onProgress;
  }

  enter(stage: string): void {
    this.#stage = stage;
    this.#report();
  }

  async run<J extends Job>(job: J): Promise<JobResult<J>> {
    const result = await this.#pool.run(job);
    this.leaveOut(1);
    return result as JobResult<J>;
  }

  /** Jobs that were counted and turned out not to be needed. */
  leaveOut(jobs: number): void {
    this.#done += jobs;
    this.#report();
  }

  #report(): void {
    this.#onProgress({ stage: this.#stage, done: this.#done, total: this.#total });
  }
}
