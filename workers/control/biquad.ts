import type { BiquadCoefficients } from '../../shared/axis/loop/biquadDesign.ts';

/**
 * Second-order section in direct form I, whose memory is past inputs and outputs: coefficients may change while it runs without a kick
 * at standstill. The memory goes on while a filter is off, so that switching it in is smooth.
 */
export class Biquad implements BiquadCoefficients {
  b0 = 1;
  b1 = 0;
  b2 = 0;
  a1 = 0;
  a2 = 0;
  /** What comes in goes out, whatever the coefficients. */
  isOff = false;
  #x1 = 0;
  #x2 = 0;
  #y1 = 0;
  #y2 = 0;

  step(x: number): number {
    const y = this.isOff
      ? x
      : this.b0 * x + this.b1 * this.#x1 + this.b2 * this.#x2 - this.a1 * this.#y1 - this.a2 * this.#y2;
    this.#x2 = this.#x1;
    this.#x1 = x;
    this.#y2 = this.#y1;
    this.#y1 = y;
    return y;
  }

  reset(): void {
    this.#x1 = 0;
    this.#x2 = 0;
    this.#y1 = 0;
    this.#y2 = 0;
  }
}
