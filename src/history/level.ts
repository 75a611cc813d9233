import { at as elementAt, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX, CHANNEL_NAMES, type ChannelName } from '../../shared/core/channels.ts';

/** Minimum and maximum of one channel, interleaved by bin. */
type Track = Float32Array<ArrayBuffer> | Float64Array<ArrayBuffer>;

/**
 * A value of a track, which holds numbers of either precision.
 *
 * @throws RangeError when the index lies outside
 */
export function sampleAt(track: Track, index: number): number {
  const value = track[index];
  if (value === undefined) throw new RangeError(`Index ${index} lies outside a track of ${track.length}.`);
  return value;
}

/** Bins of one level that make one bin of the next. */
export const RATIO = 16;

const TIME = CHANNEL_INDEX.time;

/** Nanometres at half a metre, and microseconds after an hour, need more digits than single precision has. */
const DOUBLE: readonly ChannelName[] = [
  'time',
  'setpoint',
  'motorPosition',
  'tablePosition',
  'encoderPosition',
];

/**
 * A ring of bins at one level of detail. Bins are counted from the start of the run: number `n` is kept until
 * `capacity` newer ones have been written. The track of `time` holds the span [begin, end) of each bin, s.
 */
export class Level {
  readonly tracks: readonly Track[];
  /** How many bins were ever written. */
  written = 0;
  readonly #mask: number;

  /** `capacity`: a power of two. */
  constructor(readonly capacity: number) {
    if (capacity < 2 || capacity > 2 ** 24 || (capacity & (capacity - 1)) !== 0)
      throw new RangeError(`capacity is ${capacity}, which is not a power of two from 2 to 2^24`);
    this.#mask = capacity - 1;
    this.tracks = CHANNEL_NAMES.map((name) =>
      DOUBLE.includes(name) ? new Float64Array(2 * capacity) : new Float32Array(2 * capacity),
    );
  }

  /** Number of the oldest bin that is still kept. */
  get oldest(): number {
    return Math.max(0, this.written - this.capacity);
  }

  /** Where bin `n` starts in every track. */
  slot(n: number): number {
    return 2 * (n & this.#mask);
  }

  begin(n: number): number {
    return sampleAt(elementAt(this.tracks, TIME), this.slot(n));
  }

  end(n: number): number {
    return sampleAt(elementAt(this.tracks, TIME), this.slot(n) + 1);
  }

  setEnd(n: number, time: number): void {
    elementAt(this.tracks, TIME)[this.slot(n) + 1] = time;
  }

  /** Appends one record of a telemetry frame, which starts at `at`. */
  appendRecord(bins: Float64Array, at: number): void {
    const slot = this.slot(this.written++);
    for (let c = 0, from = at; c < this.tracks.length; c++) {
      const track = elementAt(this.tracks, c);
      track[slot] = valueAt(bins, from++);
      track[slot + 1] = valueAt(bins, from++);
    }
  }

  /** Appends bin `n` of another level. */
  appendCopy(other: Level, n: number): void {
    const slot = this.slot(this.written++);
    const from = other.slot(n);
    for (let c = 0; c < this.tracks.length; c++) {
      elementAt(this.tracks, c)[slot] = sampleAt(elementAt(other.tracks, c), from);
      elementAt(this.tracks, c)[slot + 1] = sampleAt(elementAt(other.tracks, c), from + 1);
    }
  }

  /** Appends one bin that covers the `count` newest bins of a finer level. */
  appendMerged(finer: Level, count: number): void {
    const slot = this.slot(this.written++);
    const first = finer.written - count;
    for (let c = 0; c < this.tracks.length; c++) {
      const source = elementAt(finer.tracks, c);
      let low = sampleAt(source, finer.slot(first));
      let high = sampleAt(source, finer.slot(first) + 1);
      for (let n = first + 1; n < finer.written; n++) {
        const from = finer.slot(n);
        low = Math.min(low, sampleAt(source, from));
        high = Math.max(high, sampleAt(source, from + 1));
      }
      const track = elementAt(this.tracks, c);
      track[slot] = low;
      track[slot + 1] = high;
    }
  }

  /** Number of the first kept bin that ends after `time`; `written` if there is none. */
  firstEndingAfter(time: number): number {
    return this.#first((n) => this.end(n) > time);
  }

  /** Number of the first kept bin that begins at `time` or later; `written` if there is none. */
  firstBeginningFrom(time: number): number {
    return this.#first((n) => this.begin(n) >= time);
  }

  #first(isPast: (n: number) => boolean): number {
    let low = this.oldest;
    let high = this.written;
    while (low < high) {
      // No shift: the count of bins outgrows 31 bits within a long day.
      const middle = Math.floor((low + high) / 2);
      if (isPast(middle)) high = middle;
      else low = middle + 1;
    }
    return low;
  }
}
