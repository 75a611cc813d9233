import { WorkerHost } from './workerHost.ts';

/** Workers that share out work, each piece to the first that is free, in the order it came. They stay for the next piece until `end`. */
export class WorkerPool<Commands> {
  readonly #hosts: readonly WorkerHost<Commands>[];
  /** The one that was at work last comes first: its code has been compiled. */
  readonly #free: WorkerHost<Commands>[];
  readonly #waiting: ((host: WorkerHost<Commands>) => void)[] = [];

  /** Workers are started when they are first needed, `count` at most; `what` names their work in messages. */
  constructor(what: string, spawn: () => Worker, count: number) {
    this.#hosts = Array.from({ length: count }, () => new WorkerHost<Commands>(what, spawn));
    this.#free = [...this.#hosts];
  }

  /** Begins at once where a worker is free. */
  async use<Result>(work: (host: WorkerHost<Commands>) => Promise<Result>): Promise<Result> {
    const host = this.#free.pop() ?? (await this.#nextFree());
    try {
      return await work(host);
    } finally {
      const next = this.#waiting.shift();
      if (next) next(host);
      else this.#free.push(host);
    }
  }

  /** Ends all workers at once, whatever they are doing. */
  end(): void {
    for (const host of this.#hosts) host.end();
  }

  #nextFree(): Promise<WorkerHost<Commands>> {
    return new Promise((resolve) => this.#waiting.push(resolve));
  }
}
