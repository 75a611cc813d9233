import type { Scene } from '../../shared/core/scene.ts';
import type { LearningOutcome, LearnMoveCommands } from '../../shared/protocol/learnMove.ts';
import { WorkerHost } from './workerHost.ts';

/** The repeats that learn a move as the page sees them, in a worker that ends with them. */
export class LearnMoveClient {
  readonly #repeats = new WorkerHost<LearnMoveCommands>('The learning', spawn);

  /**
   * Null when another learning took its place.
   * @throws WorkerFailure
   */
  learn(scene: Scene): Promise<LearningOutcome | null> {
    return this.#repeats.runJob(async (commands) => await commands.learn(scene));
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/learnMoveWorker.ts', import.meta.url), { type: 'module' });
}
