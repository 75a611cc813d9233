import type { ChannelName } from '../../../shared/core/channels.ts';
import type { History } from '../../history/history.ts';
import type { Columns } from './stripPath.ts';

/** What columns are read from: the history of the run, or a run laid over it. */
export type ColumnSource = Pick<History, 'epoch' | 'latestTime' | 'columns'>;

/** The part of a view that decides what a column holds: [from, to) in simulated time, s. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * Minimum and maximum of one channel per column of the window. Columns lie on a fixed grid of time,
 * so a window that moves on only has its newest columns read.
 */
export class ColumnBuffer implements Columns {
  lows = new Float64Array(0);
  highs = new Float64Array(0);
  /** Number of the first column, counted from time zero. */
  firstColumn = 0;
  readonly #channel: ChannelName;
  #history: ColumnSource | null = null;
  #epoch = Number.NaN;
  #width = Number.NaN;
  /** Number of the first column that may not be complete yet. */
  #open = 0;

  constructor(channel: ChannelName) {
    this.#channel = channel;
  }

  get count(): number {
    return this.lows.length;
  }

  /** Reads the window [from, to) in `count` columns; `from` lies on the edge of a column. */
  read(history: ColumnSource, { from, to }: Span, count: number): void {
    const width = (to - from) / count;
    const first = Math.round(from / width);
    const start = this.#keep(history, first, width, count);
    if (start < count)
      history.columns(
        this.#channel,
        (first + start) * width,
        (first + count) * width,
        count - start,
        this.lows,
        this.highs,
        start,
      );
    this.#history = history;
    this.#epoch = history.epoch;
    this.#width = width;
    this.firstColumn = first;
    // The bin that is still being filled may reach back into the column before.
    const { latestTime } = history;
    this.#open = Number.isNaN(latestTime) ? first : Math.floor(latestTime / width) - 1;
  }

  /** Lowest of the minima, of these columns alone if some are named; ∞ if nothing was recorded. */
  low(columns: Uint8Array | null = null): number {
    let lowest = Number.POSITIVE_INFINITY;
    this.lows.forEach((low, c) => {
      if (low < lowest && (columns === null || columns[c] === 1)) lowest = low;
    });
    return lowest;
  }

  /** Highest of the maxima, likewise; −∞ if nothing was recorded. */
  high(columns: Uint8Array | null = null): number {
    let highest = Number.NEGATIVE_INFINITY;
    this.highs.forEach((high, c) => {
      if (high > highest && (columns === null || columns[c] === 1)) highest = high;
    });
    return highest;
  }

  /** The newest column that holds something; -1 if none does. */
  last(): number {
    let c = this.count - 1;
    while (c >= 0 && Number.isNaN(this.lows[c])) c--;
    return c;
  }

  /** Moves what is already known to its new place; from which place on columns have to be read. */
  #keep(history: ColumnSource, first: number, width: number, count: number): number {
    const shift = first - this.firstColumn;
    const same = history === this.#history && history.epoch === this.#epoch && count === this.count;
    const sameGrid = Math.abs(width / this.#width - 1) < 1e-9;
    if (count !== this.count) {
      this.lows = new Float64Array(count);
      this.highs = new Float64Array(count);
    }
    if (!same || !sameGrid || shift < 0 || shift >= count) return 0;
    this.lows.copyWithin(0, shift);
    this.highs.copyWithin(0, shift);
    return Math.min(count, Math.max(0, Math.min(this.#open, this.firstColumn + count) - first));
  }
}
