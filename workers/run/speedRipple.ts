/** Share of the constant-speed part that is left out at its beginning: what the acceleration left swinging dies away. */
const RUN_IN = 0.1;

/** Blocks of equal length that the samples are kept in. Even, since two become one when all are full. */
const BLOCKS = 200;

/**
 * Table speed over set speed less 1, while the set speed is constant: peak to peak and root mean square without the run-in. How long
 * the part becomes is known only at its end, so it is kept in blocks, whose length doubles when they are used up.
 */
export class SpeedRipple {
  private readonly highest = new Float64Array(BLOCKS);
  private readonly lowest = new Float64Array(BLOCKS);
  private readonly squares = new Float64Array(BLOCKS);
  private count = 0;
  private blockLength = 1;

  clear(): void {
    this.count = 0;
    this.blockLength = 1;
  }

  take(setSpeed: number, setAcceleration: number, speed: number): void {
    if (setAcceleration !== 0 || setSpeed === 0) return;
    const { highest, lowest, squares } = this;
    const deviation = speed / setSpeed - 1;
    if (this.count === BLOCKS * this.blockLength) this.mergePairs();
    const block = Math.floor(this.count / this.blockLength);
    const begins = this.count % this.blockLength === 0;
    highest[block] = begins ? deviation : Math.max(highest[block]!, deviation);
    lowest[block] = begins ? deviation : Math.min(lowest[block]!, deviation);
    squares[block] = (begins ? 0 : squares[block]!) + deviation * deviation;
    this.count++;
  }

  get peakToPeak(): number | null {
    if (!this.any) return null;
    let [high, low] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let k = this.firstBlock; k < this.endBlock; k++) {
      high = Math.max(high, this.highest[k]!);
      low = Math.min(low, this.lowest[k]!);
    }
    return high - low;
  }

  get rms(): number | null {
    if (!this.any) return null;
    let sum = 0;
    for (let k = this.firstBlock; k < this.endBlock; k++) sum += this.squares[k]!;
    return Math.sqrt(sum / (this.count - this.firstBlock * this.blockLength));
  }

  /** A single sample is the turning point of a profile that only touches its top speed. */
  private get any(): boolean {
    return this.count > 1;
  }

  private get firstBlock(): number {
    return Math.floor((RUN_IN * this.count) / this.blockLength);
  }

  private get endBlock(): number {
    return Math.ceil(this.count / this.blockLength);
  }

  private mergePairs(): void {
    const { highest, lowest, squares } = this;
    for (let k = 0; k < BLOCKS / 2; k++) {
      highest[k] = Math.max(highest[2 * k]!, highest[2 * k + 1]!);
      lowest[k] = Math.min(lowest[2 * k]!, lowest[2 * k + 1]!);
      squares[k] = squares[2 * k]! + squares[2 * k + 1]!;
    }
    this.blockLength *= 2;
  }
}
