import type { AxisStatus, MoveFigures } from '../../shared/protocol/axis.ts';

/** A move of the present run. */
export interface LoggedMove {
  readonly index: number;
  /** Simulated time, s. */
  readonly start: number;
  /** Null while it is under way. */
  readonly figures: MoveFigures | null;
}

export interface FinishedMove extends LoggedMove {
  readonly figures: MoveFigures;
}

/** More than any cycle has, and than any window shows. */
const MAX = 256;

/** When the moves of the run began, and their figures, oldest first. */
export class MoveLog {
  moves: readonly LoggedMove[] = [];
  #run = Number.NaN;
  #wholeFrom = 0;

  /** Takes over the state of a frame; whether a move has begun or another run. */
  take(run: number, { finished, lastMove, moveStart, tick }: AxisStatus): boolean {
    const another = run !== this.#run;
    if (another) {
      this.#run = run;
      this.moves = [];
    }
    if (tick === 0) this.#wholeFrom = 0;
    if (moveStart === null) return another;
    const index = lastMove ? lastMove.index + 1 : 0;
    if (this.moves.at(-1)?.index === index) return another;
    let first: LoggedMove = { index, start: moveStart, figures: null };
    const fresh = [first];
    // Each began its duration before the one after it.
    for (const figures of [...finished].reverse()) {
      first = { index: figures.index, start: first.start - figures.duration, figures };
      fresh.unshift(first);
    }
    const before = this.moves.filter((move) => move.index < first.index);
    this.moves = [...before, ...fresh].slice(-MAX);
    return true;
  }

  /** A parameter was changed: moves that have begun by now were not made with the present ones throughout. */
  changed(status: AxisStatus | null): void {
    if (!status || status.tick === 0) return;
    // A running axis is ahead of its newest frame.
    const unseen = status.state === 'running' ? 1 : 0;
    this.#wholeFrom = (this.moves.at(-1)?.index ?? -1) + 1 + unseen;
  }

  get finished(): readonly FinishedMove[] {
    return this.moves.filter((move): move is FinishedMove => move.figures !== null);
  }

  /** Whether a move was made with the present parameters from its start to its end. */
  isOfPresent({ index }: LoggedMove): boolean {
    return index >= this.#wholeFrom;
  }
}
