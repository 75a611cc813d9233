import { stepAtLeast } from '../../plot/ticks.ts';

interface RangeLimits {
  readonly min: number;
  readonly max: number;
  /** The scale falls back only when the amplitude fits this share of the smaller step, … */
  readonly calm: number;
  /** … and has done so for this long, s. */
  readonly hold: number;
}

/**
 * A scale of 1-2-5 steps that follows an amplitude without flickering: up at once, so that nothing leaves the scale; down only
 * after the amplitude has fitted well within the smaller step for a while.
 */
export class SteppedRange {
  step: number;
  #calmFor = 0;
  #calmStep = 0;
  readonly #limits: RangeLimits;

  constructor(limits: RangeLimits) {
    this.#limits = limits;
    this.step = limits.min;
  }

  /** `amplitude` in the unit of the limits, `elapsed` seconds since the last call. Returns the step. */
  follow(amplitude: number, elapsed: number): number {
    const { min, max, calm, hold } = this.#limits;
    const size = Number.isFinite(amplitude) ? Math.abs(amplitude) : max;
    const needed = stepAtLeast(Math.min(Math.max(size, min), max));
    const roomy = stepAtLeast(Math.min(Math.max(size / calm, min), max));
    if (needed >= this.step || roomy >= this.step) {
      this.#settle(Math.max(needed, this.step));
      return this.step;
    }
    this.#calmFor += elapsed;
    this.#calmStep = Math.max(this.#calmStep, roomy);
    if (this.#calmFor >= hold) this.#settle(this.#calmStep);
    return this.step;
  }

  #settle(step: number): void {
    this.step = step;
    this.#calmFor = 0;
    this.#calmStep = 0;
  }
}
