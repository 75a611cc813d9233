import { CHANNEL_INDEX, type ChannelName } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { History } from '../history/history.ts';

/** Over what time a peak is held, and a force is averaged, s of the run. */
export const PEAK_TIME = 1;
export const MEAN_TIME = 4;

/** What the gauges read: the present values, the parameters, and what went before. SI. */
export class Reading {
  private readonly extremes = new Float64Array(2);

  constructor(
    private readonly now: Float64Array,
    readonly p: Parameters,
    private readonly history: History,
    /** The moment that is read, s of the run; for the present, the newest that is known. */
    private readonly moment = () => history.latestTime,
  ) {}

  value(channel: ChannelName): number {
    return this.now[CHANNEL_INDEX[channel]] ?? Number.NaN;
  }

  /** Largest magnitude within the last second of the run; NaN if nothing was recorded. */
  peak(channel: ChannelName): number {
    const { history, extremes } = this;
    const time = this.moment();
    history.extremes(channel, time - PEAK_TIME, time, extremes);
    return Math.max(-extremes[0]!, extremes[1]!);
  }

  /** Root mean square over the last seconds of the run; NaN if nothing was recorded. */
  rms(channel: ChannelName): number {
    const time = this.moment();
    return Math.sqrt(this.history.meanSquare(channel, time - MEAN_TIME, time));
  }
}

/** A gauge and how it follows the readings: the bar with every refresh, the words as often as they can be read. */
export interface Instrument {
  readonly element: HTMLElement;
  move(reading: Reading): void;
  write(reading: Reading): void;
}
