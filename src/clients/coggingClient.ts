import type { Scene } from '../../shared/core/scene.ts';
import type { CoggingCommands, LearnedCogging } from '../../shared/protocol/cogging.ts';
import { WorkerHost } from './workerHost.ts';

/** The slow scan that learns cogging as the page sees it, in a worker that ends with it. */
export class CoggingClient {
  readonly #scan = new WorkerHost<CoggingCommands>('The scan', spawn);

  /**
   * Null when another scan took its place.
   * @throws WorkerFailure
   */
  learn(scene: Scene): Promise<LearnedCogging | null> {
    return this.#scan.runJob(async (commands) => await commands.learn(scene));
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/coggingWorker.ts', import.meta.url), { type: 'module' });
}
