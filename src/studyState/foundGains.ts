import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { sameScene } from './sameSimulation.ts';

interface Tuned {
  /** As it was before it was tuned. */
  readonly scene: Scene;
  readonly peakSensitivity: number;
  readonly gains: ParameterChanges;
}

/** Tunings that are remembered: eight studies of four drives. */
const MOST = 32;

/** What axes were tuned to while the page was open, so that a job that comes back is not tuned again. */
export class FoundGains {
  #tuned: readonly Tuned[] = [];

  add(scene: Scene, peakSensitivity: number, gains: ParameterChanges): void {
    const others = this.#tuned.filter((each) => each.gains !== gains);
    this.#tuned = [{ scene, peakSensitivity, gains }, ...others].slice(0, MOST);
  }

  /** What this axis, untuned, was tuned to within this peak sensitivity; null: nothing. */
  of(scene: Scene, peakSensitivity: number): ParameterChanges | null {
    const found = this.#tuned.find(
      (each) => each.peakSensitivity === peakSensitivity && sameScene(each.scene, scene),
    );
    return found?.gains ?? null;
  }
}
