/** Does one job at a time: a worker behind a port, or a function in this thread. */
export interface JobWorker<Job, Result> {
  run(job: Job): Promise<Result>;
}

interface Waiting<Job, Result> {
  readonly job: Job;
  readonly resolve: (result: Result) => void;
  readonly reject: (reason: unknown) => void;
}

/** Hands jobs out in the order they came, each to the first free worker. */
export class JobPool<Job, Result> {
  readonly #free: JobWorker<Job, Result>[];
  readonly #waiting: Waiting<Job, Result>[] = [];

  constructor(workers: readonly JobWorker<Job, Result>[]) {
    this.#free = [...workers];
  }

  run(job: Job): Promise<Result> {
    return new Promise((resolve, reject) => {
      this.#waiting.push({ job, resolve, reject });
      this.#handOut();
    });
  }

  #handOut(): void {
    for (;;) {
      const worker = this.#free.at(-1);
      const next = this.#waiting.at(0);
      if (!worker || !next) return;
      this.#free.pop();
      this.#waiting.shift();
      worker
        .run(next.job)
        .then(next.resolve, next.reject)
        .finally(() => {
          this.#free.push(worker);
          this.#handOut();
        });
    }
  }
}
