import { valueAt } from '../../shared/core/at.ts';

/** How far from its anchor a wave is followed, rad. */
const REACH = 0.25;

interface Wave {
  readonly amplitude: number;
  /** rad/m */
  readonly rate: number;
  /** rad */
  readonly phase: number;
}

/*
 * A sum of waves along the axis, Σ A sin(wx + φ), and its integral, −Σ A/w cos(wx + φ). What an axis does in one period of its controller it
 * does within a small part of a wave, so sine and cosine are taken of an anchor nearby, and from there on
 *
 *   sin(θ + δ) = sin θ cos δ + cos θ sin δ        cos(θ + δ) = cos θ cos δ − sin θ sin δ        δ = w (x − x_anchor)
 *
 * with the series of sin δ and cos δ up to δ¹¹ and δ¹⁰: cut off by less than 0.25¹²/12! = 1.2e-16, so exact to rounding. The anchor moves when it is told to and at no
 * other time: asking changes nothing.
 */
export class Waves {
  readonly #count: number = 0;
  readonly #rate: Float64Array;
  readonly #phase: Float64Array;
  readonly #amplitude: Float64Array;
  /** A sin θ and A cos θ at the anchor. */
  readonly #sine: Float64Array;
  readonly #cosine: Float64Array;
  /** m; without one, NaN is beyond any reach. */
  #anchor = Number.NaN;
  readonly #reach: number = 0;

  constructor(waves: readonly Wave[] = []) {
    this.#count = waves.length;
    this.#rate = Float64Array.from(waves, ({ rate }) => rate);
    this.#phase = Float64Array.from(waves, ({ phase }) => phase);
    this.#amplitude = Float64Array.from(waves, ({ amplitude }) => amplitude);
    this.#sine = new Float64Array(waves.length);
    this.#cosine = new Float64Array(waves.length);
    this.#reach = REACH / Math.max(0, ...this.#rate);
  }

  get isEmpty(): boolean {
    return this.#count === 0;
  }

  /** Has the anchor within reach of x, m. */
  follow(x: number): void {
    // Half of it is left for the way until the next call.
    if (Math.abs(x - this.#anchor) <= this.#reach / 2) return;
    this.#anchor = x;
    for (let k = 0; k < this.#count; k++) {
      const angle = valueAt(this.#rate, k) * x + valueAt(this.#phase, k);
      this.#sine[k] = valueAt(this.#amplitude, k) * Math.sin(angle);
      this.#cosine[k] = valueAt(this.#amplitude, k) * Math.cos(angle);
    }
  }

  /** Σ A sin(wx + φ). */
  at(x: number): number {
    if (this.#count === 0) return 0;
    const from = x - this.#anchor;
    let sum = 0;
    if (Math.abs(from) <= this.#reach) {
      let k = 0;
      do {
        const d = valueAt(this.#rate, k) * from;
        const s = d * d;
        sum += valueAt(this.#sine, k) * cosine(s) + valueAt(this.#cosine, k) * d * sinePer(s);
      } while (++k < this.#count);
      return sum;
    }
    for (let k = 0; k < this.#count; k++)
      sum += valueAt(this.#amplitude, k) * Math.sin(valueAt(this.#rate, k) * x + valueAt(this.#phase, k));
    return sum;
  }

  /** −Σ A/w cos(wx + φ), m times the unit of A. */
  integral(x: number): number {
    const from = x - this.#anchor;
    let sum = 0;
    if (Math.abs(from) <= this.#reach) {
      for (let k = 0; k < this.#count; k++) {
        const rate = valueAt(this.#rate, k);
        const d = rate * from;
        const s = d * d;
        sum -= (valueAt(this.#cosine, k) * cosine(s) - valueAt(this.#sine, k) * d * sinePer(s)) / rate;
      }
      return sum;
    }
    for (let k = 0; k < this.#count; k++) {
      const rate = valueAt(this.#rate, k);
      sum -= (valueAt(this.#amplitude, k) / rate) * Math.cos(rate * x + valueAt(this.#phase, k));
    }
    return sum;
  }
}

/** cos δ, of δ². */
function cosine(s: number): number {
  return 1 - s * (1 / 2 - s * (1 / 24 - s * (1 / 720 - s * (1 / 40320 - s / 3628800))));
}

/** sin δ over δ, of δ². */
function sinePer(s: number): number {
  return 1 - s * (1 / 6 - s * (1 / 120 - s * (1 / 5040 - s * (1 / 362880 - s / 39916800))));
}
