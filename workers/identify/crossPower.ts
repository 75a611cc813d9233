import type { Complex } from '../math/complex.ts';

/**
 * Averages over repeated measurements of a cause X and its effect Y at one frequency:
 *
 *   H1 = Σ Y conj X / Σ |X|²       γ² = |Σ Y conj X|² / (Σ |X|² Σ |Y|²)
 *
 * H1 is not biased by noise on Y. γ² is 1 when every measurement shows the same ratio. Source:
 * Bendat, Piersol, Random Data, 4th ed. 2010, ch. 6.
 */
export class CrossPower {
  #re = 0;
  #im = 0;
  #cause = 0;
  #effect = 0;

  add(x: Complex, y: Complex): void {
    this.#re += y.re * x.re + y.im * x.im;
    this.#im += y.im * x.re - y.re * x.im;
    this.#cause += x.re * x.re + x.im * x.im;
    this.#effect += y.re * y.re + y.im * y.im;
  }

  get response(): Complex {
    return { re: this.#re / this.#cause, im: this.#im / this.#cause };
  }

  get coherence(): number {
    return (this.#re * this.#re + this.#im * this.#im) / (this.#cause * this.#effect);
  }
}
