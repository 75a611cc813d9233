import { at as elementAt, present, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_COUNT, CHANNEL_INDEX, type ChannelName } from '../../shared/core/channels.ts';
import type { Frame } from '../../shared/protocol/axis.ts';
import { Level, RATIO, sampleAt } from './level.ts';
import { Segments } from './segments.ts';

/**
 * Bins kept per level. At 8000 position-loop samples a second: 8 s of single samples, then 2 minutes, 17 minutes and
 * 2 hours in steps of 2, 32 and 512 ms; 50 MB in all, allocated once.
 */
const CAPACITIES: readonly number[] = [65536, 65536, 32768, 16384];

/** A mean square needs bins across which a force hardly changes, s. */
const MEAN_RESOLUTION = 5e-4;

/** A bin that ends on the edge of a column must not reach into the next one by a rounding error; columns. */
const ROUNDING = 1e-6;

/** Into how many columns a window is cut to find its extremes. */
const FINE = 256;

const TIME = CHANNEL_INDEX.time;

/**
 * What the axis did lately: minimum and maximum of every channel, in levels of detail from the single position-loop
 * sample upwards, in memory that never grows. No level drops a sample, so the shortest spike is
 * seen at any zoom. Times are simulated seconds, values SI.
 */
export class History {
  /** Changes whenever there is something new to be seen. */
  version = 0;
  /** Changes whenever everything before was forgotten: what was read earlier is worth nothing. */
  epoch = 0;
  #run = Number.NaN;
  readonly #levels: readonly Level[];
  readonly #segments: Segments;
  /** Per level: bins that the next level has not merged yet. */
  readonly #pending: number[];
  /** Time between two samples of the recorder, s: the shortest seen. */
  #spacing = Number.POSITIVE_INFINITY;
  /** Time of the newest sample, s. */
  #newest = Number.NaN;
  readonly #lows = new Float64Array(FINE);
  readonly #highs = new Float64Array(FINE);

  /** `capacities`: bins kept per level, finest first, powers of two of at least `RATIO`. */
  constructor(capacities: readonly number[] = CAPACITIES) {
    const small = capacities.find((capacity) => capacity < RATIO);
    if (small !== undefined) throw new RangeError(`capacity is ${small}, allowed is ${RATIO} or more`);
    this.#levels = capacities.map((capacity) => new Level(capacity));
    this.#segments = new Segments(this.#levels);
    this.#pending = capacities.map(() => 0);
  }

  /** Memory that the record takes, bytes. */
  get byteLength(): number {
    const tracks = this.#levels.flatMap((level) => level.tracks);
    return tracks.reduce((sum, track) => sum + track.byteLength, 0);
  }

  /** Time between two samples of the recorder, s; Infinity before there are two. */
  get spacing(): number {
    return this.#spacing;
  }

  /** Simulated time of the newest sample, s; NaN if there is none. */
  get latestTime(): number {
    return this.#newest;
  }

  /** Start of the oldest bin that is kept at any level, s; NaN if there is none. */
  get oldestTime(): number {
    let k = this.#levels.length - 1;
    while (k > 0 && elementAt(this.#levels, k).written === 0) k--;
    const coarsest = elementAt(this.#levels, k);
    return coarsest.written > 0 ? coarsest.begin(coarsest.oldest) : Number.NaN;
  }

  /** Takes over a telemetry frame; the frame of another run forgets everything before it. */
  ingest(frame: Pick<Frame, 'run' | 'bins' | 'count'>): void {
    if (frame.run !== this.#run) this.clear();
    this.#run = frame.run;
    for (let i = 0; i < frame.count; i++) this.#append(frame.bins, i * 2 * CHANNEL_COUNT);
    if (frame.count > 0) this.version++;
  }

  clear(): void {
    this.epoch++;
    for (const level of this.#levels) level.written = 0;
    this.#pending.fill(0);
    this.#spacing = Number.POSITIVE_INFINITY;
    this.#newest = Number.NaN;
    this.version++;
  }

  /**
   * Minimum and maximum of a channel in each of `count` equal columns of [from, to), into `count` places of `lows` and
   * `highs` from place `at` on. A column takes every bin that touches it, so an extreme may show in the neighbouring
   * column too; where nothing was recorded it holds NaN.
   */
  columns(
    channel: ChannelName,
    from: number,
    to: number,
    count: number,
    lows: Float64Array,
    highs: Float64Array,
    at = 0,
  ): void {
    lows.fill(Number.NaN, at, at + count);
    highs.fill(Number.NaN, at, at + count);
    const perSecond = count / (to - from);
    this.#segments.cover(from, to, 1 / perSecond);
    for (let s = 0; s < this.#segments.count; s++) {
      const level = present(this.#levels[elementAt(this.#segments.level, s)]);
      const span = elementAt(level.tracks, TIME);
      const track = elementAt(level.tracks, CHANNEL_INDEX[channel]);
      for (let n = valueAt(this.#segments.first, s); n < valueAt(this.#segments.end, s); n++) {
        const slot = level.slot(n);
        const low = sampleAt(track, slot);
        const high = sampleAt(track, slot + 1);
        const first = Math.floor((sampleAt(span, slot) - from) * perSecond + ROUNDING);
        const end = Math.max(first + 1, Math.ceil((sampleAt(span, slot + 1) - from) * perSecond - ROUNDING));
        const last = at + Math.min(end, count) - 1;
        for (let column = at + Math.max(first, 0); column <= last; column++) {
          if (!(valueAt(lows, column) <= low)) lows[column] = low;
          if (!(valueAt(highs, column) >= high)) highs[column] = high;
        }
      }
    }
  }

  /**
   * What every channel was at a moment, into `out` in the order of CHANNELS: the middle between minimum and maximum of the
   * finest bin that holds it, or of the nearest one; false if nothing was recorded.
   */
  valuesAt(time: number, out: Float64Array): boolean {
    if (elementAt(this.#levels, 0).written === 0) return false;
    const reaches = (level: Level) => level.oldest === 0 || time >= level.begin(level.oldest);
    const level = this.#levels.find(reaches) ?? present(this.#levels.at(-1));
    const slot = level.slot(Math.min(level.firstEndingAfter(time), level.written - 1));
    for (let c = 0; c < CHANNEL_COUNT; c++)
      out[c] =
        (sampleAt(elementAt(level.tracks, c), slot) + sampleAt(elementAt(level.tracks, c), slot + 1)) / 2;
    return true;
  }

  /** Minimum and maximum of a channel in [from, to) into `out[0]` and `out[1]`; NaN if nothing was recorded. */
  extremes(channel: ChannelName, from: number, to: number, out: Float64Array): void {
    this.columns(channel, from, to, FINE, this.#lows, this.#highs);
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let column = 0; column < FINE; column++) {
      if (valueAt(this.#lows, column) < low) low = valueAt(this.#lows, column);
      if (valueAt(this.#highs, column) > high) high = valueAt(this.#highs, column);
    }
    const found = low <= high;
    out[0] = found ? low : Number.NaN;
    out[1] = found ? high : Number.NaN;
  }

  /**
   * Mean square of a channel over what was recorded in [from, to); NaN if that is nothing. A channel is taken to run
   * straight from the minimum to the maximum of a bin, which has the mean square (a² + ab + b²)/3.
   */
  meanSquare(channel: ChannelName, from: number, to: number): number {
    let integral = 0;
    let duration = 0;
    this.#segments.cover(from, to, MEAN_RESOLUTION);
    for (let s = 0; s < this.#segments.count; s++) {
      const level = present(this.#levels[elementAt(this.#segments.level, s)]);
      const span = elementAt(level.tracks, TIME);
      const track = elementAt(level.tracks, CHANNEL_INDEX[channel]);
      for (let n = valueAt(this.#segments.first, s); n < valueAt(this.#segments.end, s); n++) {
        const slot = level.slot(n);
        const a = sampleAt(track, slot);
        const b = sampleAt(track, slot + 1);
        const length = sampleAt(span, slot + 1) - sampleAt(span, slot);
        integral += ((a * a + a * b + b * b) / 3) * length;
        duration += length;
      }
    }
    return integral / duration;
  }

  /** A history of its own of what is known of [from, to), in the finest detail that is kept of it. */
  excerpt(from: number, to: number): History {
    const segments = this.#segments;
    const levels = this.#levels;
    segments.cover(from, to, 0);
    let bins = 0;
    for (let s = 0; s < segments.count; s++) bins += valueAt(segments.end, s) - valueAt(segments.first, s);
    const copy = new History(capacitiesFor(bins));
    for (let s = 0; s < segments.count; s++) {
      const level = present(levels[elementAt(segments.level, s)]);
      for (let n = valueAt(segments.first, s); n < valueAt(segments.end, s); n++) copy.#take(level, n);
    }
    return copy;
  }

  #take(level: Level, n: number): void {
    this.#merge(RATIO);
    elementAt(this.#levels, 0).appendCopy(level, n);
    this.#pending[0] = elementAt(this.#pending, 0) + 1;
    this.#newest = level.begin(n);
  }

  #append(bins: Float64Array, at: number): void {
    const finest = elementAt(this.#levels, 0);
    const begin = valueAt(bins, at + 2 * TIME);
    const last = valueAt(bins, at + 2 * TIME + 1);
    // Time only runs backwards if another run has begun unannounced.
    if (begin <= this.#newest) this.clear();
    if (finest.written > 0) {
      const step = begin - this.#newest;
      this.#spacing = Math.min(this.#spacing, step);
      const gap = step > 1.5 * this.#spacing;
      if (!gap) finest.setEnd(finest.written - 1, begin);
      this.#merge(gap ? 1 : RATIO);
    }
    finest.appendRecord(bins, at);
    finest.setEnd(finest.written - 1, last + (this.#spacing < Infinity ? this.#spacing : 0));
    this.#pending[0] = elementAt(this.#pending, 0) + 1;
    this.#newest = last;
  }

  /** Passes the bins of every level that has `least` or more waiting on to the next level. */
  #merge(min: number): void {
    for (let k = 0; k + 1 < this.#levels.length && elementAt(this.#pending, k) >= min; k++) {
      elementAt(this.#levels, k + 1).appendMerged(elementAt(this.#levels, k), elementAt(this.#pending, k));
      this.#pending[k] = 0;
      this.#pending[k + 1] = elementAt(this.#pending, k + 1) + 1;
    }
  }
}

/** Room for so many bins at the finest level, and for what they merge to. */
function capacitiesFor(bins: number): number[] {
  const finest = 2 ** Math.ceil(Math.log2(Math.max(bins, RATIO)));
  return [1, RATIO, RATIO * RATIO].map((merged) => Math.max(RATIO, finest / merged));
}
