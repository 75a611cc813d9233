import { proxy, type Remote, transfer } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type {
  PretuneBreadth,
  PretuneCommands,
  PretuneGoal,
  PretuneProgress,
  PretuneResult,
  TuningPoint,
} from '../../shared/protocol/pretune.ts';
import { workerCount } from './workerCount.ts';
import { underWay, WorkerEnded, WorkerHost } from './workerHost.ts';

/** More workers than this gain nothing: the jobs come in rounds of a few. */
const MAX_WORKERS = 4;

type Commands = PretuneCommands<MessagePort>;

/**
 * Automatic pretuning as the page sees it: one worker leads, the others do the jobs that it gives them. They stay for the next run, which
 * takes two thirds of the time because their code has been compiled, until `cancel`.
 */
export class PretuneClient {
  readonly #leader = new WorkerHost<Commands>('Pretuning', spawn);
  readonly #helpers: readonly WorkerHost<Commands>[];

  constructor() {
    this.#helpers = Array.from(
      { length: workerCount(MAX_WORKERS) },
      () => new WorkerHost<Commands>('Pretuning', spawn),
    );
  }

  /**
   * Null when it was cancelled. One run at a time.
   * @throws RangeError naming what of the goal cannot be; WorkerFailure when any of the workers fails
   */
  pretune(
    scene: Scene,
    goal: PretuneGoal,
    onProgress: (progress: PretuneProgress) => void,
    breadth: PretuneBreadth = 'trade-off',
  ): Promise<PretuneResult | null> {
    return this.#led(onProgress, (leader, ports, heard) =>
      leader.pretune(scene, goal, breadth, ports, heard),
    );
  }

  /**
   * The best tuning at the limit of the goal alone.
   * @throws as `pretune`
   */
  tune(
    scene: Scene,
    goal: PretuneGoal,
    onProgress: (progress: PretuneProgress) => void,
  ): Promise<TuningPoint | null> {
    return this.#led(onProgress, (leader, ports, heard) => leader.tune(scene, goal, ports, heard));
  }

  async #led<Result>(
    onProgress: (progress: PretuneProgress) => void,
    lead: (
      leader: Remote<Commands>,
      ports: MessagePort[],
      heard: (progress: PretuneProgress) => void,
    ) => Promise<Result>,
  ): Promise<Result | null> {
    const { during, end } = underWay();
    const ports: MessagePort[] = [];
    const over = deferred();
    const serving = this.#helpers.map((helper) => {
      const { port1, port2 } = new MessageChannel();
      ports.push(port1);
      return serve(helper, port2, over.promise);
    });
    const result = this.#leader.ask((leader) =>
      lead(leader, transfer(ports, ports), proxy(during(onProgress))),
    );
    try {
      return await Promise.race([result, ...serving]);
    } catch (error) {
      // Whatever went wrong, the next run begins with workers that know nothing of this one.
      this.cancel();
      if (error instanceof WorkerEnded) return null;
      throw error;
    } finally {
      end();
      over.resolve();
      for (const each of [result, ...serving]) each.catch(() => {});
    }
  }

  /** Ends the workers at once, whatever they are doing; the next run starts fresh ones. */
  cancel(): void {
    for (const host of [this.#leader, ...this.#helpers]) host.end();
  }
}

/** A helper at work: settles when the run is over, or when the helper has failed or was ended. */
function serve(helper: WorkerHost<Commands>, port: MessagePort, over: Promise<void>): Promise<null> {
  return helper.ask(async (commands) => {
    await commands.serve(transfer(port, [port]));
    await over;
    return null;
  });
}

function deferred(): { readonly promise: Promise<void>; readonly resolve: () => void } {
  let resolve = () => {};
  const promise = new Promise<void>((settle) => {
    resolve = settle;
  });
  return { promise, resolve };
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/pretuneWorker.ts', import.meta.url), { type: 'module' });
}
