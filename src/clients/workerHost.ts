import { type Remote, releaseProxy, wrap } from 'comlink';
import type { Heartbeat } from '../../shared/protocol/heartbeat.ts';
import { Watchdog } from './watchdog.ts';

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

/** What hears only as long as its job is under way. */
type During = <News extends unknown[]>(hear: (...news: News) => void) => (...news: News) => void;

let jobs = 0;

/** Whether anything is worked out that somebody waits for, of whatever client. */
export function isJobUnderWay(): boolean {
  return jobs > 0;
}

/** A job, from now to `end`. News of it may come after its answer: what hears through `during` hears none after `end`. */
export function underWay(): { readonly during: During; readonly end: () => void } {
  let isUnderWay = true;
  jobs++;
  return {
    during:
      (hear) =>
      (...news) => {
        if (isUnderWay) hear(...news);
      },
    end: () => {
      if (isUnderWay) jobs--;
      isUnderWay = false;
    },
  };
}

interface RunningWorker<Commands> {
  readonly worker: Worker;
  readonly commands: Remote<Commands>;
  readonly watchdog: Watchdog;
  /** Rejects an answer that is still to come: once the worker has failed or was ended, a command alone would never settle. */
  readonly waiting: Set<(reason: Error) => void>;
  isStopped: boolean;
}

/**
 * A worker of the page: started when it is first needed, watched while it works, ended at once, and started afresh by the next
 * job. Every client of a worker goes through this class.
 */
export class WorkerHost<Commands> {
  readonly #what: string;
  readonly #spawn: () => Worker;
  #running: RunningWorker<Commands> | null = null;
  /** A failure that nobody has heard of, since no answer was due: the next question does. */
  #unheard: WorkerFailure | null = null;

  /** `what` names the work in messages: 'The analysis'. `spawn` starts the worker. */
  constructor(what: string, spawn: () => Worker) {
    this.#what = what;
    this.#spawn = spawn;
  }

  /**
   * The answer of a worker that stays for the next question.
   * @throws WorkerFailure when the worker fails, or has failed since the last answer; what the command itself throws
   */
  ask<Answer>(command: (commands: Remote<Commands>) => Promise<Answer>): Promise<Answer> {
    const failure = this.#unheard;
    this.#unheard = null;
    if (failure) return Promise.reject(failure);
    this.#running ??= this.#start();
    return answerOf(this.#running, command);
  }

  /**
   * The answer of a worker that is ended with it; a job under way is cancelled by the next. Null when it was cancelled.
   * What the job hears of its progress goes through `during`, since such news may come after the answer: then it is dropped.
   * @throws as `ask`
   */
  async runJob<Answer>(
    job: (commands: Remote<Commands>, during: During) => Promise<Answer>,
  ): Promise<Answer | null> {
    this.end();
    this.#unheard = null;
    const { during, end } = underWay();
    const running = this.#start();
    this.#running = running;
    const heard: During = (hear) =>
      during((...news) => {
        running.watchdog.heard();
        hear(...news);
      });
    try {
      return await answerOf(running, (commands) => job(commands, heard));
    } catch (error) {
      if (error instanceof WorkerEnded) return null;
      throw error;
    } finally {
      end();
      this.#stop(running, new WorkerEnded(this.#what));
    }
  }

  /** Ends the worker at once, whatever it is doing. The next question or job starts a fresh one. */
  end(): void {
    this.#unheard = null;
    if (this.#running) this.#stop(this.#running, new WorkerEnded(this.#what));
  }

  #start(): RunningWorker<Commands> {
    const worker = this.#spawn();
    const fail = (reason: string) => {
      const failure = new WorkerFailure(this.#what, reason);
      if (running.waiting.size === 0 && this.#running === running) this.#unheard = failure;
      this.#stop(running, failure);
    };
    const watchdog = new Watchdog(
      () => worker.postMessage({ heartbeat: 'asked' } satisfies Heartbeat),
      () => fail('it no longer responds.'),
    );
    const running = {
      worker,
      commands: wrap<Commands>(worker),
      watchdog,
      waiting: new Set<(reason: Error) => void>(),
      isStopped: false,
    };
    worker.addEventListener('message', () => watchdog.heard());
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      fail(event.message || 'its script could not be loaded.');
    });
    worker.addEventListener('messageerror', () => fail('it sent a message that could not be read.'));
    return running;
  }

  #stop(running: RunningWorker<Commands>, reason: Error): void {
    if (running.isStopped) return;
    running.isStopped = true;
    running.watchdog.stop();
    running.worker.terminate();
    // What is not given back to comlink it keeps for good, the worker with all its listeners included.
    running.commands[releaseProxy]();
    for (const reject of running.waiting) reject(reason);
    if (this.#running === running) this.#running = null;
  }
}

/** What a command answers; the worker is watched as long as it owes an answer to anyone. */
function answerOf<Commands, Answer>(
  { commands, watchdog, waiting }: RunningWorker<Commands>,
  command: (commands: Remote<Commands>) => Promise<Answer>,
): Promise<Answer> {
  return new Promise<Answer>((resolve, reject) => {
    const settled = <Value>(settle: (value: Value) => void) => {
      return (value: Value) => {
        waiting.delete(reject);
        if (waiting.size === 0) watchdog.pause();
        settle(value);
      };
    };
    waiting.add(reject);
    watchdog.start();
    command(commands).then(settled(resolve), settled(reject));
  });
}
