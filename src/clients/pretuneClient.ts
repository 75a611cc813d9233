import { proxy, type Remote, transfer, wrap } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type {
  PretuneBreadth,
  PretuneCommands,
  PretuneGoal,
  PretuneProgress,
  PretuneResult,
} from '../../shared/protocol/pretune.ts';

/** More workers than this gain nothing: the jobs come in rounds of a few. */
const MAX_WORKERS = 4;

type Commands = Remote<PretuneCommands<MessagePort>>;

/** Automatic pretuning as the page sees it: one run at a time, in a pool of workers that live as long as it does. */
export class PretuneClient {
  #leader: Commands | null = null;

  /** Resolves to null when cancelled. */
  async pretune(
    scene: Scene,
    goal: PretuneGoal,
    onProgress: (progress: PretuneProgress) => void,
    breadth: PretuneBreadth = 'trade-off',
  ): Promise<PretuneResult | null> {
    // One core stays with the page and its running axis.
    const count = Math.min(Math.max(navigator.hardwareConcurrency - 1, 1), MAX_WORKERS);
    const workers = Array.from({ length: count + 1 }, start);
    const [leader, ...helpers] = workers.map((worker) => wrap<PretuneCommands<MessagePort>>(worker));
    this.#leader = leader!;
    try {
      const ports = helpers.map((helper) => {
        const { port1, port2 } = new MessageChannel();
        void helper.serve(transfer(port2, [port2]));
        return port1;
      });
      return await leader!.pretune(scene, goal, breadth, transfer(ports, ports), proxy(onProgress));
    } finally {
      this.#leader = null;
      for (const worker of workers) worker.terminate();
    }
  }

  cancel(): void {
    void this.#leader?.cancel();
  }
}

function start(): Worker {
  return new Worker(new URL('../../workers/entry/pretuneWorker.ts', import.meta.url), { type: 'module' });
}
