import { type Remote, wrap } from 'comlink';

/** The worker itself failed: its script could not be loaded, it threw outside a command, or a message was unreadable. */
export class WorkerFailure extends Error {
  override readonly name = 'WorkerFailure';
  readonly reason: string;

  /** `what` names the work in the message: 'The analysis'. */
  constructor(what: string, reason: string) {
    super(`${what} stopped: ${reason}`);
    this.reason = reason;
  }
}

/** The page itself ended the worker while an answer was still to come. */
export class WorkerEnded extends Error {
  override readonly name = 'WorkerEnded';

  constructor(what: string) {
    super(`${what} was ended.`);
  }
}

interface RunningWorker<Commands> {
  readonly worker: Worker;
  readonly commands: Remote<Commands>;
  /** Rejects as soon as the worker has failed or was ended; a command alone would never settle. */
  readonly stopped: Promise<never>;
  readonly reject: (reason: Error) => void;
}

/**
 * A worker of the page: started when it is first needed, watched while it works, ended at once, and started afresh by the next
 * job. Every client of a worker goes through this class.
 */
export class WorkerHost<Commands> {
  readonly #what: string;
  readonly #spawn: () => Worker;
  #running: RunningWorker<Commands> | null = null;

  /** `what` names the work in messages: 'The analysis'. `spawn` starts the worker. */
  constructor(what: string, spawn: () => Worker) {
    this.#what = what;
    this.#spawn = spawn;
  }

  /**
   * The answer of a worker that stays for the next question.
   * @throws WorkerFailure when the worker fails; what the command itself throws
   */
  ask<Answer>(command: (commands: Remote<Commands>) => Promise<Answer>): Promise<Answer> {
    this.#running ??= this.#start();
    const { commands, stopped } = this.#running;
    return Promise.race([command(commands), stopped]);
  }

  /**
   * The answer of a worker that is ended with it; a job under way is cancelled by the next. Null when it was cancelled.
   * @throws as `ask`
   */
  async runJob<Answer>(job: (commands: Remote<Commands>) => Promise<Answer>): Promise<Answer | null> {
    this.end();
    const running = this.#start();
    this.#running = running;
    try {
      return await Promise.race([job(running.commands), running.stopped]);
    } catch (error) {
      if (error instanceof WorkerEnded) return null;
      throw error;
    } finally {
      this.#stop(running, new WorkerEnded(this.#what));
    }
  }

  /** Ends the worker at once, whatever it is doing. The next question or job starts a fresh one. */
  end(): void {
    if (this.#running) this.#stop(this.#running, new WorkerEnded(this.#what));
  }

  #start(): RunningWorker<Commands> {
    const worker = this.#spawn();
    let reject: (reason: Error) => void = () => {};
    const stopped = new Promise<never>((_, rejectStopped) => {
      reject = rejectStopped;
    });
    // Whoever waits for an answer hears of it; without anyone waiting it is no unhandled rejection.
    stopped.catch(() => {});
    const running = { worker, commands: wrap<Commands>(worker), stopped, reject };
    const fail = (reason: string) => this.#stop(running, new WorkerFailure(this.#what, reason));
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      fail(event.message || 'its script could not be loaded.');
    });
    worker.addEventListener('messageerror', () => fail('it sent a message that could not be read.'));
    return running;
  }

  #stop(running: RunningWorker<Commands>, reason: Error): void {
    running.worker.terminate();
    running.reject(reason);
    if (this.#running === running) this.#running = null;
  }
}
