/** A hair line over all rows: a fraction of their width, 0 at the left edge, 1 at the right; null: there is none. */
export class Cursor {
  fraction: number | null = null;

  /** The column it stands in, of `count`. */
  column(count: number): number | null {
    return this.fraction === null ? null : Math.min(count - 1, Math.floor(this.fraction * count));
  }

  /** Moves by whole columns; the first time it comes in at the newest edge. */
  move(columns: number, count: number): void {
    const from = this.column(count) ?? count - Math.max(columns, 0);
    this.fraction = (Math.min(Math.max(from + columns, 0), count - 1) + 0.5) / count;
  }
}
