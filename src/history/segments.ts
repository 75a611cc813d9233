import { at } from '../../shared/core/at.ts';
import { type Level, RATIO } from './level.ts';

/**
 * The bins that cover a time window once, oldest first, as runs of bins of one level each. Wanted is the coarsest level
 * whose bins are still no longer than `resolution`; older than that level reaches, coarser bins stand in, and
 * what it has not merged yet is taken from the finer levels.
 */
export class Segments {
  count = 0;
  /** Per segment: index of the level, number of its first bin and of the bin after its last. */
  readonly level: Int8Array;
  readonly first: Float64Array;
  readonly end: Float64Array;
  readonly #levels: readonly Level[];

  constructor(levels: readonly Level[]) {
    this.#levels = levels;
    this.level = new Int8Array(levels.length);
    this.first = new Float64Array(levels.length);
    this.end = new Float64Array(levels.length);
  }

  /** Finds the bins for [from, to), s. */
  cover(from: number, to: number, resolution: number): void {
    this.count = 0;
    const wanted = this.#levelFor(resolution);
    let covered = from;
    for (let k = this.#levels.length - 1; k >= 0; k--) {
      const level = at(this.#levels, k);
      const until = k > wanted ? Math.min(to, this.#reach(k - 1)) : to;
      const first = level.firstEndingAfter(covered);
      const end = level.firstBeginningFrom(until);
      if (end <= first) continue;
      this.level[this.count] = k;
      this.first[this.count] = first;
      this.end[this.count] = end;
      this.count++;
      covered = level.end(end - 1);
    }
  }

  /** Bins closed early by a gap are short, so the length of a level's bins is told from the finest. */
  #levelFor(resolution: number): number {
    const finest = at(this.#levels, 0);
    if (finest.written === 0) return 0;
    let length = (finest.end(finest.written - 1) - finest.begin(finest.written - 1)) * RATIO;
    let k = 0;
    while (k + 1 < this.#levels.length && at(this.#levels, k + 1).written > 0 && length <= resolution) {
      length *= RATIO;
      k++;
    }
    return k;
  }

  /** From what time on level `k` still has everything. */
  #reach(k: number): number {
    const level = at(this.#levels, k);
    return level.oldest > 0 ? level.begin(level.oldest) : Number.NEGATIVE_INFINITY;
  }
}
