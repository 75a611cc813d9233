import { LaneClient } from '../app/laneClient.ts';
import { PretuneClient } from '../app/pretuneClient.ts';
import type { StudyStore } from './studyStore.ts';

/**
 * Tunes and simulates the lanes of a study that have not been yet. Tuning takes all cores for one lane after the other; lanes that are
 * tuned are simulated meanwhile, each in a worker of its own. What is found for a lane that has changed under way is dropped.
 */
export class StudyRun {
  readonly #store: StudyStore;
  #cancel: (() => void) | null = null;

  constructor(store: StudyStore) {
    this.#store = store;
  }

  cancel(): void {
    this.#cancel?.();
  }

  async start(): Promise<void> {
    if (this.#cancel) return;
    const pretuning = new PretuneClient();
    const simulating = new LaneClient();
    let cancelled = false;
    this.#cancel = () => {
      cancelled = true;
      pretuning.cancel();
      simulating.cancel();
    };
    const simulations: Promise<void>[] = [];
    for (let index = 0; index < this.#store.state.lanes.length && !cancelled; index++) {
      if (this.#store.state.lanes[index]!.outcome) continue;
      const isTuned = await this.#tune(index, pretuning);
      if (isTuned && !cancelled) simulations.push(this.#simulate(index, simulating));
    }
    await Promise.all(simulations);
    this.#cancel = null;
    this.#store.endProgress();
  }

  /** Returns whether the lane has gains then. */
  async #tune(index: number, pretuning: PretuneClient): Promise<boolean> {
    const { choice, scene } = this.#store.state.lanes[index]!;
    if (choice.gains) return true;
    const limit = this.#store.state.study.job.values.peakSensitivity;
    const found = await this.#watched(index, () =>
      pretuning.pretune(
        scene,
        { kind: 'peak sensitivity', limit },
        ({ stage, done, total }) => {
          if (this.#isStill(index, scene))
            this.#store.setProgress(index, { stage, share: done / Math.max(total, 1) });
        },
        'one limit',
      ),
    );
    if (!found) return false;
    this.#store.setGains(index, found.best.changes);
    return true;
  }

  async #simulate(index: number, simulating: LaneClient): Promise<void> {
    const { scene } = this.#store.state.lanes[index]!;
    const { job } = this.#store.state.study;
    const outcome = await this.#watched(index, () =>
      simulating.evaluate(job, scene, (progress) => {
        if (this.#isStill(index, scene)) this.#store.setProgress(index, progress);
      }),
    );
    if (outcome) this.#store.setOutcome(index, outcome);
  }

  /** What is found for a lane, or null: it was cancelled, or the lane is another by now, or it went wrong, which is told. */
  async #watched<T>(index: number, find: () => Promise<T | null>): Promise<T | null> {
    const { scene } = this.#store.state.lanes[index]!;
    try {
      const found = await find();
      return this.#isStill(index, scene) ? found : null;
    } catch (error) {
      if (this.#isStill(index, scene))
        this.#store.setTrouble(index, error instanceof Error ? error.message : String(error));
      return null;
    }
  }

  #isStill(index: number, scene: unknown): boolean {
    return this.#store.state.lanes[index]?.scene === scene;
  }
}
