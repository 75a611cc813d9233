import { ranged } from '../../shared/core/format.ts';
import type { TimeView } from './timeView.ts';

/**
 * A hair line over all rows: a fraction of their width, 0 at the left edge, 1 at the right; null:
 * there is none.
 */
export class Cursor {
  fraction: number | null = null;
  /** The second cursor, which the first is read against: it stays at its moment of simulated time, s; null: there is none. */
  mark: number | null = null;

  /** The column it lies in, of `count`. */
  column(count: number): number | null {
    return this.fraction === null ? null : Math.min(count - 1, Math.floor(this.fraction * count));
  }

  /** Moves by whole columns; the first time it comes in at the fraction `entry`. */
  move(columns: number, count: number, entry: number): void {
    const column = this.column(count);
    const to = column === null ? Math.floor(entry * count) : column + columns;
    this.fraction = (Math.min(Math.max(to, 0), count - 1) + 0.5) / count;
  }

  /** Sets the second cursor where the first is, or takes it away. */
  toggleMark(view: TimeView, count: number): void {
    const column = this.column(count);
    this.mark = this.mark !== null || column === null ? null : view.timeAt((column + 0.5) / count);
  }

  /** Where the second cursor lies, as a fraction of the width; null where there is none in view. */
  markFraction(view: TimeView): number | null {
    if (this.mark === null) return null;
    const fraction = (this.mark - view.from) / (view.to - view.from);
    return fraction >= 0 && fraction < 1 ? fraction : null;
  }
}

/** The time from one cursor to the other, s, and the frequency of which it is the period. */
export function intervalText(seconds: number): string {
  const time = `Δt ${ranged(seconds, 's')}`;
  return seconds === 0 ? 'Δt 0 s' : `${time}, 1/Δt ${ranged(1 / Math.abs(seconds), 'Hz')}`;
}
