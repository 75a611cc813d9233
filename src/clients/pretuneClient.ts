import { proxy, transfer } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type {
  PretuneBreadth,
  PretuneCommands,
  PretuneGoal,
  PretuneProgress,
  PretuneResult,
} from '../../shared/protocol/pretune.ts';
import { WorkerHost } from './workerHost.ts';

/** More workers than this gain nothing: the jobs come in rounds of a few. */
const MAX_WORKERS = 4;
/** Fewer would leave a core of a small computer idle while somebody waits; the running axis needs a tenth of one. */
const MIN_WORKERS = 2;

type Commands = PretuneCommands<MessagePort>;

/** Automatic pretuning as the page sees it: one worker leads, the others do the jobs that it gives them. */
export class PretuneClient {
  readonly #leader = new WorkerHost<Commands>('Pretuning', spawn);

  /**
   * Null when it was cancelled. One run at a time.
   * @throws RangeError naming what of the goal cannot be; WorkerFailure when any of the workers fails
   */
  async pretune(
    scene: Scene,
    goal: PretuneGoal,
    onProgress: (progress: PretuneProgress) => void,
    breadth: PretuneBreadth = 'trade-off',
  ): Promise<PretuneResult | null> {
    // Of many cores one stays with the page and its running axis.
    const count = Math.min(Math.max(navigator.hardwareConcurrency - 1, MIN_WORKERS), MAX_WORKERS);
    const helpers = Array.from({ length: count }, () => new WorkerHost<Commands>('Pretuning', spawn));
    try {
      return await this.#leader.runJob((leader, during) => {
        const ports: MessagePort[] = [];
        const serving: Promise<null>[] = [];
        for (const helper of helpers) {
          const { port1, port2 } = new MessageChannel();
          ports.push(port1);
          serving.push(serveUntilEnded(helper, port2));
        }
        const result = leader.pretune(
          scene,
          goal,
          breadth,
          transfer(ports, ports),
          proxy(during(onProgress)),
        );
        return Promise.race([result, ...serving]);
      });
    } finally {
      for (const helper of helpers) helper.end();
    }
  }

  cancel(): void {
    this.#leader.end();
  }
}

/** A helper at work. Settles only when it has failed or was ended. */
function serveUntilEnded(helper: WorkerHost<Commands>, port: MessagePort): Promise<null> {
  return helper.runJob(async (commands) => {
    await commands.serve(transfer(port, [port]));
    return new Promise<null>(() => {});
  });
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/pretuneWorker.ts', import.meta.url), { type: 'module' });
}
