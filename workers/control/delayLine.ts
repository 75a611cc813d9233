import { valueAt } from '../../shared/core/at.ts';

/** Samples that a delay line holds: more than the longest delay over the shortest period, see `configure`. */
const LENGTH = 1024;

/** Delays a sampled signal by a time that need not be a whole number of samples: straight between them. */
export class DelayLine {
  readonly #values = new Float64Array(LENGTH);
  #next = 0;
  #whole = 0;
  #part = 0;

  /** Delay and period in s. A delay beyond the length of the line is cut to it. */
  configure(delay: number, period: number): void {
    const samples = Math.min(delay / period, LENGTH - 2);
    this.#whole = Math.floor(samples);
    this.#part = samples - this.#whole;
  }

  /** Fills the line with one value. */
  fill(value: number): void {
    this.#values.fill(value);
  }

  step(value: number): number {
    this.#values[this.#next] = value;
    const newer = valueAt(this.#values, (this.#next + LENGTH - this.#whole) % LENGTH);
    const older = valueAt(this.#values, (this.#next + LENGTH - this.#whole - 1) % LENGTH);
    this.#next = (this.#next + 1) % LENGTH;
    return newer + this.#part * (older - newer);
  }
}
