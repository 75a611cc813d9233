import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_COUNT } from '../../shared/core/channels.ts';

const STRIDE = 2 * CHANNEL_COUNT;

/**
 * Gathers the record of every tick into bins that keep minimum and maximum of each channel, so that no spike is lost. A bin closes
 * when asked to (once per position-loop sample), never by the clock: the same run gives the same bins at any time scale.
 */
export class Recorder {
  /** Closed bins waiting to be taken. */
  count = 0;
  readonly capacity: number;
  #bins: Float64Array<ArrayBuffer>;
  #empty = true;

  constructor(capacity: number) {
    this.capacity = capacity;
    // One more than is handed out: the bin in progress needs room when all the others are closed.
    this.#bins = new Float64Array((capacity + 1) * STRIDE);
  }

  get full(): boolean {
    return this.count >= this.capacity;
  }

  /** Takes the record of one tick. */
  take(record: Float64Array): void {
    const bins = this.#bins;
    let at = this.count * STRIDE;
    if (this.#empty) {
      for (let c = 0; c < CHANNEL_COUNT; c++, at += 2) {
        const value = valueAt(record, c);
        bins[at] = value;
        bins[at + 1] = value;
      }
      this.#empty = false;
      return;
    }
    for (let c = 0; c < CHANNEL_COUNT; c++, at += 2) {
      const value = valueAt(record, c);
      if (value < valueAt(bins, at)) bins[at] = value;
      if (value > valueAt(bins, at + 1)) bins[at + 1] = value;
    }
  }

  /** Closes the present bin, if it holds anything. */
  closeBin(): void {
    if (this.#empty) return;
    this.count++;
    this.#empty = true;
  }

  /**
   * Hands out the closed bins and goes on in `spare`, or in new memory. Taken between bins only the closed ones go; a bin in
   * progress is carried over.
   */
  hand(spare: Float64Array<ArrayBuffer> | null): { bins: Float64Array<ArrayBuffer>; count: number } {
    const bins = this.#bins;
    const { count } = this;
    const next = spare?.length === bins.length ? spare : new Float64Array(bins.length);
    if (!this.#empty) next.set(bins.subarray(count * STRIDE, (count + 1) * STRIDE));
    this.#bins = next;
    this.count = 0;
    return { bins, count };
  }

  clear(): void {
    this.count = 0;
    this.#empty = true;
  }
}
