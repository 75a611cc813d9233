/**
 * Seeded normal noise: the 32-bit generator mulberry32 (T. Ettinger, public domain) through the polar method of
 * Box, Muller and Marsaglia (Knuth, The Art of Computer Programming 2, 3.4.1). Mean 0, rms 1.
 */
export class NormalNoise {
  #state: number;
  #spare = Number.NaN;

  constructor(seed: number) {
    this.#state = seed >>> 0;
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

  #uniform(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let t = this.#state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }
}
