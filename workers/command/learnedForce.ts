import { valueAt } from '../../shared/core/at.ts';
import { type LearnedMove, makesLearnedMove } from '../../shared/core/learnedMove.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';

/** Plays the force that was learned for a repeated move, sample by sample from the start of each cycle. */
export class LearnedForce {
  readonly #learned: LearnedMove | undefined;
  #acts = false;
  #cycle = Number.NaN;
  #index = 0;

  constructor(learned: LearnedMove | undefined, p: Parameters) {
    this.#learned = learned;
    this.configure(p);
  }

  /** It acts on the move that it was learned on, and begins with a whole cycle. */
  configure(p: Parameters): void {
    this.#acts = this.#learned !== undefined && makesLearnedMove(this.#learned, p);
  }

  /** N, at the next sample, in the cycle of the program that it belongs to. */
  step(cycle: number): number {
    if (cycle !== this.#cycle) {
      this.#cycle = cycle;
      this.#index = 0;
    }
    const k = this.#index++;
    if (!this.#acts || !this.#learned || k >= this.#learned.forces.length) return 0;
    return valueAt(this.#learned.forces, k);
  }
}
