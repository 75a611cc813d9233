import type { Scene } from '../../shared/core/scene.ts';
import type { WearCommands, WearTest } from '../../shared/protocol/wear.ts';
import { WorkerHost } from './workerHost.ts';

/** The positioning tests of the new and the worn machine as the page sees them, in a worker that ends with them. */
export class WearClient {
  readonly #tests = new WorkerHost<WearCommands>('The positioning test', spawn);

  /**
   * Null when another test took its place.
   * @throws WorkerFailure
   */
  test(scene: Scene): Promise<WearTest | null> {
    return this.#tests.runJob(async (commands) => await commands.test(scene));
  }

  end(): void {
    this.#tests.end();
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/wearWorker.ts', import.meta.url), { type: 'module' });
}
