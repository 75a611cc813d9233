import { SteppedRange } from '../build/ranging.ts';

/** The lens is so many scale bars from its middle to its rim; the error may fill this share of it. */
export const BARS = 2.4;
const FILL = 0.86;

/** Length of the scale bar of a lens, m, from 1 nm to 10 mm: it follows the largest error that has to fit. */
export class LensRange {
  readonly #range = new SteppedRange({ min: 1e-9, max: 1e-2, calm: 0.7, hold: 1.2 });

  get bar(): number {
    return this.#range.step;
  }

  /** `elapsed` seconds of the clock since the last call. */
  follow(amplitude: number, elapsed: number): void {
    this.#range.follow(amplitude / (BARS * FILL), elapsed);
  }
}
