import type { ChannelName } from '../../shared/core/channels.ts';
import type { History } from '../history/history.ts';
import type { ColumnSource } from '../plot/strip/columnBuffer.ts';
import type { LoggedMove } from './moveLog.ts';

/** What can be laid over a run: a recording, and how its moves repeat. */
export interface Laid {
  /** What was recorded in [from, to), s of its own time. */
  readonly history: History;
  readonly from: number;
  readonly to: number;
  /** Number of its first move, and moves after which the program repeats itself. */
  readonly firstMove: number;
  readonly movesPerCycle: number;
}

/** A recording laid over the present run: it begins again wherever the present run begins the same move. */
export class Ghost implements ColumnSource {
  /** Changes whenever it is laid elsewhere. */
  epoch = 0;
  /** It is known as far as it reaches. */
  readonly latestTime = Number.POSITIVE_INFINITY;
  #starts: readonly number[] = [];

  readonly #laid: Laid;

  constructor(laid: Laid) {
    this.#laid = laid;
  }

  /** Lays it over the moves of the present run, oldest first. */
  align(moves: readonly LoggedMove[]): void {
    const { firstMove, movesPerCycle } = this.#laid;
    this.#starts = moves
      .filter(({ index }) => (index - firstMove) % movesPerCycle === 0)
      .map(({ start }) => start);
    this.epoch++;
  }

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
    const { history, from: own, to: end } = this.#laid;
    const width = (to - from) / count;
    for (const [i, start] of this.#starts.entries()) {
      const until = Math.min(start + end - own, this.#starts[i + 1] ?? Number.POSITIVE_INFINITY);
      const first = Math.max(0, Math.floor((start - from) / width));
      const after = Math.min(count, Math.ceil((until - from) / width));
      if (after <= first) continue;
      const shift = own - start;
      history.columns(
        channel,
        from + first * width + shift,
        from + after * width + shift,
        after - first,
        lows,
        highs,
        at + first,
      );
    }
  }
}
