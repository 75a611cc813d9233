/**
 * A hair line over all rows: a fraction of their width, 0 at the left edge, 1 at the right; null:
 * there is none.
 */
export class Cursor {
  fraction: number | null = null;

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
}
