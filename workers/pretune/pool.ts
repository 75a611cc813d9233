/** Whatever does jobs, one at a time: a worker behind a port, or a function in this thread. */
export interface JobWorker<Job, Result> {
  run(job: Job): Promise<Result>;
}

/** Why a job that waited was not done. */
export class CancelledError extends Error {
  override readonly name = 'CancelledError';

  constructor() {
    super('The job was cancelled before it began.');
  }
}

interface Waiting<Job, Result> {
  readonly job: Job;
  readonly resolve: (result: Result) => void;
  readonly reject: (reason: unknown) => void;
}

/** Jobs in the order they came, each to the first worker that is free. */
export class JobPool<Job, Result> {
  private readonly free: JobWorker<Job, Result>[];
  private waiting: Waiting<Job, Result>[] = [];
  private cancelled = false;

  constructor(workers: readonly JobWorker<Job, Result>[]) {
    this.free = [...workers];
  }

  /** @throws CancelledError when the pool was cancelled before the job began */
  run(job: Job): Promise<Result> {
    if (this.cancelled) return Promise.reject(new CancelledError());
    return new Promise((resolve, reject) => {
      this.waiting.push({ job, resolve, reject });
      this.handOut();
    });
  }

  /** Drops what waits, for good; what runs is finished. */
  cancel(): void {
    this.cancelled = true;
    for (const { reject } of this.waiting) reject(new CancelledError());
    this.waiting = [];
  }

  private handOut(): void {
    while (this.free.length > 0 && this.waiting.length > 0) {
      const worker = this.free.pop()!;
      const { job, resolve, reject } = this.waiting.shift()!;
      worker
        .run(job)
        .then(resolve, reject)
        .finally(() => {
          this.free.push(worker);
          this.handOut();
        });
    }
  }
}
