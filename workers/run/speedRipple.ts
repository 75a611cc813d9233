import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';

/** Share of the constant-speed part that is left out at its beginning: what the acceleration left swinging dies away. */
const RUN_IN = 0.1;

/** The set speed is constant while its rate of change is below this share of it in a second: a shaped command is so to rounding. */
const STEADY = 1e-6;

/** Blocks of equal length that the samples are kept in. Even, since two become one when all are full. */
const BLOCKS = 200;

/**
 * Table speed over set speed less 1, while the set speed is constant: peak to peak and root mean square without the run-in. How long
 * the part becomes is known only at its end, so it is kept in blocks, whose length doubles when they are used up.
 */
export class SpeedRipple {
  readonly #highest = new Float64Array(BLOCKS);
  readonly #lowest = new Float64Array(BLOCKS);
  readonly #squares = new Float64Array(BLOCKS);
  #count = 0;
  #blockLength = 1;

  clear(): void {
    this.#count = 0;
    this.#blockLength = 1;
  }

  /** One position-loop sample. */
  take(record: Float64Array): void {
    const setSpeed = valueAt(record, C.setSpeed);
    const setAcceleration = valueAt(record, C.setAcceleration);
    if (setSpeed === 0 || Math.abs(setAcceleration) > STEADY * Math.abs(setSpeed)) return;
    const highest = this.#highest;
    const lowest = this.#lowest;
    const squares = this.#squares;
    const deviation = valueAt(record, C.tableSpeed) / setSpeed - 1;
    if (this.#count === BLOCKS * this.#blockLength) this.#mergePairs();
    const block = Math.floor(this.#count / this.#blockLength);
    const begins = this.#count % this.#blockLength === 0;
    highest[block] = begins ? deviation : Math.max(valueAt(highest, block), deviation);
    lowest[block] = begins ? deviation : Math.min(valueAt(lowest, block), deviation);
    squares[block] = (begins ? 0 : valueAt(squares, block)) + deviation * deviation;
    this.#count++;
  }

  get peakToPeak(): number | null {
    if (!this.#any) return null;
    let [high, low] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let k = this.#firstBlock; k < this.#endBlock; k++) {
      high = Math.max(high, valueAt(this.#highest, k));
      low = Math.min(low, valueAt(this.#lowest, k));
    }
    return high - low;
  }

  get rms(): number | null {
    if (!this.#any) return null;
    let sum = 0;
    for (let k = this.#firstBlock; k < this.#endBlock; k++) sum += valueAt(this.#squares, k);
    return Math.sqrt(sum / (this.#count - this.#firstBlock * this.#blockLength));
  }

  /** A single sample is the turning point of a profile that only touches its top speed. */
  get #any(): boolean {
    return this.#count > 1;
  }

  get #firstBlock(): number {
    return Math.floor((RUN_IN * this.#count) / this.#blockLength);
  }

  get #endBlock(): number {
    return Math.ceil(this.#count / this.#blockLength);
  }

  #mergePairs(): void {
    const highest = this.#highest;
    const lowest = this.#lowest;
    const squares = this.#squares;
    for (let k = 0; k < BLOCKS / 2; k++) {
      highest[k] = Math.max(valueAt(highest, 2 * k), valueAt(highest, 2 * k + 1));
      lowest[k] = Math.min(valueAt(lowest, 2 * k), valueAt(lowest, 2 * k + 1));
      squares[k] = valueAt(squares, 2 * k) + valueAt(squares, 2 * k + 1);
    }
    this.#blockLength *= 2;
  }
}
