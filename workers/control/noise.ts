import { seeded } from '../../shared/core/seeded.ts';

/**
 * Seeded normal noise: uniform numbers through the polar method of Box, Muller and Marsaglia (Knuth, The Art of Computer
 * Programming 2, 3.4.1). Mean 0, rms 1.
 */
export class NormalNoise {
  readonly #uniform: () => number;
  #spare = Number.NaN;

  constructor(seed: number) {
    this.#uniform = seeded(seed);
  }

  next(): number {
    if (!Number.isNaN(this.#spare)) {
      const value = this.#spare;
      this.#spare = Number.NaN;
      return value;
    }
    for (;;) {
      const a = 2 * this.#uniform() - 1;
      const b = 2 * this.#uniform() - 1;
      const s = a * a + b * b;
      if (s > 0 && s < 1) {
        const scale = Math.sqrt((-2 * Math.log(s)) / s);
        this.#spare = b * scale;
        return a * scale;
      }
    }
  }
}
