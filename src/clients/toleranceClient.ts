import type { Scene } from '../../shared/core/scene.ts';
import type { ToleranceCommands } from '../../shared/tolerance/commands.ts';
import type { MachineResult, RunResult } from '../../shared/tolerance/runFigures.ts';
import type { ToleranceSummary } from '../../shared/tolerance/summary.ts';
import type { ToleranceStudy } from '../../shared/tolerance/toleranceStudy.ts';
import { workerCount } from './workerCount.ts';
import { underWay, WorkerEnded, WorkerHost } from './workerHost.ts';

/** Machines do not wait for each other, but each worker holds a copy of the model. */
const MAX_WORKERS = 8;

/** Machines that a worker is asked for at a time: a quarter of a second of a short cycle. */
const CHUNK = 8;

/** Between two summaries, ms at least, and so many times as long as the last one took: it takes turns with the machines. */
const EVERY = 1000;
const PER_SUMMARY = 5;

interface ToleranceSinks {
  onProgress(done: number): void;
  /** What the machines so far come to. `fresh` are those since the last time. */
  onSummary(summary: ToleranceSummary, fresh: readonly RunResult[]): void;
}

/** Tolerance studies as the page sees them: several workers run machines, one sums up while they do. */
export class ToleranceClient {
  readonly #judge = new WorkerHost<ToleranceCommands>('The summary', spawn);
  readonly #runners: readonly WorkerHost<ToleranceCommands>[];

  constructor() {
    this.#runners = Array.from(
      { length: workerCount(MAX_WORKERS) },
      () => new WorkerHost('The tolerance study', spawn),
    );
  }

  /**
   * What the scene as it is comes to; null when it was cancelled.
   * @throws WorkerFailure
   */
  async nominal(scene: Scene): Promise<MachineResult | null> {
    try {
      return await this.#judge.ask((commands) => commands.nominal(scene));
    } catch (error) {
      if (error instanceof WorkerEnded) return null;
      throw error;
    }
  }

  /**
   * Runs all machines. One study at a time. Returns whether it came to its end; false when it was cancelled.
   * @throws WorkerFailure when any of the workers fails
   */
  async run(study: ToleranceStudy, { onProgress, onSummary }: ToleranceSinks): Promise<boolean> {
    const { end } = underWay();
    let [next, done, isUnderWay] = [1, 0, true];
    const waiting: RunResult[] = [];
    const sumUp = async () => {
      const fresh = waiting.splice(0);
      const summary = await this.#judge.ask((commands) => commands.take(fresh));
      if (summary) onSummary(summary, fresh);
    };
    const sumUpNowAndThen = async () => {
      let took = 0;
      for (;;) {
        await pause(Math.max(EVERY, PER_SUMMARY * took));
        if (!isUnderWay) return;
        const begun = performance.now();
        if (waiting.length > 0) await sumUp();
        took = performance.now() - begun;
      }
    };
    const work = async (host: WorkerHost<ToleranceCommands>, leadIn: number) => {
      while (isUnderWay && next <= study.runs) {
        const from = next;
        next = Math.min(from + CHUNK, study.runs + 1);
        const to = next - 1;
        const results = await host.ask((commands) => commands.run(study, leadIn, from, to));
        if (!isUnderWay) return;
        waiting.push(...results);
        done += results.length;
        onProgress(done);
      }
    };
    try {
      await this.#judge.ask((commands) => commands.begin(study));
      const leadIn = await this.#judge.ask((commands) => commands.leadIn(study.scene));
      const all = Promise.all(this.#runners.map((host) => work(host, leadIn)));
      await Promise.race([all, sumUpNowAndThen()]);
      await all;
      isUnderWay = false;
      await sumUp();
      return true;
    } catch (error) {
      this.cancel();
      if (error instanceof WorkerEnded) return false;
      throw error;
    } finally {
      isUnderWay = false;
      end();
    }
  }

  /** Ends the workers at once, whatever they are doing. */
  cancel(): void {
    for (const host of [this.#judge, ...this.#runners]) host.end();
  }
}

function pause(time: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, time));
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/toleranceWorker.ts', import.meta.url), { type: 'module' });
}
