import type { ForeseenTuning, PretuneProgress, TuningPoint } from '../../shared/protocol/pretune.ts';
import type { Job, JobResult } from './jobs.ts';
import type { LoopLimit } from './loopLimit.ts';
import type { JobPool } from './pool.ts';
import { byOutcome } from './ranking.ts';
import type { Task } from './task.ts';

/** Counts the jobs of one pretuning, and keeps the best tuning that was found so far. */
export class Work {
  #stage = '';
  #done = 0;
  #foreseen: ForeseenTuning | null = null;
  #best: TuningPoint | null = null;
  readonly #pool: JobPool<Job, JobResult>;
  readonly #total: number;
  readonly #onProgress: (progress: PretuneProgress) => void;

  readonly #task: Task;
  readonly #wanted: LoopLimit;

  /**
   * @param wanted the limit of the goal: tunings at another are no answer to it
   * @param total number of jobs to come
   */
  constructor(
    pool: JobPool<Job, JobResult>,
    task: Task,
    wanted: LoopLimit,
    total: number,
    onProgress: (progress: PretuneProgress) => void,
  ) {
    this.#pool = pool;
    this.#task = task;
    this.#wanted = wanted;
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

  /** What can be said before anything has run. */
  foresee(tuning: ForeseenTuning | null): void {
    this.#foreseen = tuning;
    this.#report();
  }

  /** A tuning at a limit that was run. */
  offer(limit: LoopLimit, point: TuningPoint | null): void {
    if (limit !== this.#wanted || point === null || point.trip) return;
    if (this.#best && byOutcome(this.#task)(point, this.#best) >= 0) return;
    this.#best = point;
    this.#report();
  }

  /** Jobs that were counted and turned out not to be needed. */
  leaveOut(jobs: number): void {
    this.#done += jobs;
    this.#report();
  }

  #report(): void {
    const { figure } = this.#task;
    const soFar = this.#best && { figure, point: this.#best };
    this.#onProgress({
      stage: this.#stage,
      done: this.#done,
      total: this.#total,
      foreseen: this.#foreseen,
      soFar,
    });
  }
}
