import { CHANNEL_INDEX, type ChannelName } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { MoveFigures } from '../../shared/protocol/axis.ts';
import type { History } from '../history/history.ts';

/** Over what time a peak is held, and a force is averaged, s of the run. */
export const PEAK_TIME = 1;
export const MEAN_TIME = 4;

/** What is read of the past. */
interface Past {
  /** The moment that is read, s of the run. */
  readonly time: number;
  /** The last move that had ended by then; null before the first. */
  readonly lastMove: MoveFigures | null;
}

/** What the gauges read: the values of a moment, the parameters, and what went before. SI. */
export class Reading {
  readonly p: Parameters;
  readonly lastMove: MoveFigures | null;
  readonly #now: Float64Array;
  readonly #history: History;
  readonly #time: number;
  readonly #extremes = new Float64Array(2);

  /** `now` holds the values of the moment in the order of CHANNELS; without a past the newest moment that is known is read. */
  constructor(
    now: Float64Array,
    p: Parameters,
    history: History,
    { time, lastMove }: Past = { time: history.latestTime, lastMove: null },
  ) {
    this.p = p;
    this.lastMove = lastMove;
    this.#now = now;
    this.#history = history;
    this.#time = time;
  }

  value(channel: ChannelName): number {
    return this.#now[CHANNEL_INDEX[channel]] ?? Number.NaN;
  }

  /** Largest magnitude within the last second of the run; NaN if nothing was recorded. */
  peak(channel: ChannelName): number {
    this.#history.extremes(channel, this.#time - PEAK_TIME, this.#time, this.#extremes);
    const [low = Number.NaN, high = Number.NaN] = this.#extremes;
    return Math.max(-low, high);
  }

  /** Root mean square over the last seconds of the run; NaN if nothing was recorded. */
  rms(channel: ChannelName): number {
    return Math.sqrt(this.#history.meanSquare(channel, this.#time - MEAN_TIME, this.#time));
  }
}

/** A gauge and how it follows the readings: the bar with every refresh, the words as often as they can be read. */
export interface Instrument {
  readonly element: HTMLElement;
  move(reading: Reading): void;
  write(reading: Reading): void;
}
