import { valueAt } from '../../shared/core/at.ts';
import type { ShaperImpulse } from '../../shared/motion/shaping.ts';

/**
 * The impulses of an input shaper on a sampled signal. One that falls between two samples is shared out between them, so that its mean
 * delay is kept. It keeps distances from an origin, so that a standing signal comes through exactly.
 */
export class Taps {
  readonly #values: Float64Array;
  readonly #shares: Float64Array;
  /** Of each tap, in samples. */
  readonly #delays: Int32Array;
  #next = 0;
  #origin = 0;

  /** `period` of sampling in s. */
  constructor(impulses: readonly ShaperImpulse[], period: number) {
    const taps = impulses.flatMap(({ share, delay }) => {
      const whole = Math.floor(delay / period);
      const part = delay / period - whole;
      return [
        { share: share * (1 - part), delay: whole },
        { share: share * part, delay: whole + 1 },
      ];
    });
    this.#shares = Float64Array.from(taps, ({ share }) => share);
    this.#delays = Int32Array.from(taps, ({ delay }) => delay);
    this.#values = new Float64Array(Math.max(...this.#delays) + 1);
  }

  /** As if the signal had always had this value. */
  standAt(value: number): void {
    this.#origin = value;
    this.#values.fill(0);
  }

  step(value: number): number {
    const length = this.#values.length;
    this.#values[this.#next] = value - this.#origin;
    let sum = 0;
    for (let k = 0; k < this.#shares.length; k++) {
      const delay = this.#delays[k] ?? 0;
      sum += valueAt(this.#shares, k) * valueAt(this.#values, (this.#next + length - delay) % length);
    }
    this.#next = (this.#next + 1) % length;
    return this.#origin + sum;
  }
}
