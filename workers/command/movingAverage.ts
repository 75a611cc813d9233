import { valueAt } from '../../shared/core/at.ts';

/**
 * Mean of a sampled signal over a time that need not be a whole number of samples. It keeps distances from an origin, so that a
 * standing signal comes through exactly.
 */
export class MovingAverage {
  readonly #values: Float64Array;
  readonly #width: number = 0;
  readonly #whole: number = 0;
  #next = 0;
  #sum = 0;
  #origin = 0;

  /** `width` in samples, at least 1. */
  constructor(width: number) {
    this.#width = width;
    this.#whole = Math.floor(width);
    this.#values = new Float64Array(this.#whole);
  }

  /** As if the signal had always had this value. */
  standAt(value: number): void {
    this.#origin = value;
    this.#values.fill(0);
    this.#sum = 0;
  }

  step(value: number): number {
    const newest = value - this.#origin;
    const leaving = valueAt(this.#values, this.#next);
    this.#values[this.#next] = newest;
    this.#next = (this.#next + 1) % this.#whole;
    this.#sum += newest - leaving;
    return this.#origin + (this.#sum + (this.#width - this.#whole) * leaving) / this.#width;
  }
}
