import { LensRange } from '../stage/lens/lensRange.ts';

/** The range of lenses at one scale: what the axes that go on need. */
export class CommonRange {
  #range = new LensRange();
  #count = 0;

  get range(): LensRange {
    return this.#range;
  }

  /** `errors` of the axes that go on, m, each the largest that its lens has to hold; `elapsed` seconds since the last call. */
  follow(errors: readonly number[], elapsed: number): void {
    // What an axis that has tripped needed on its way says nothing of the others: the scale is theirs at once.
    if (errors.length < this.#count && errors.length > 0) this.#range = new LensRange();
    this.#count = errors.length;
    if (errors.length > 0) this.#range.follow(Math.max(...errors), elapsed);
  }
}

/** What a line reaches, and whether its axis has stopped. */
interface Reached {
  readonly low: number;
  readonly high: number;
  readonly isStopped: boolean;
}

/** The lowest and highest of the axes that go on, or of all where none does: what an axis does as it trips would dwarf the others. */
export function reachedTogether(lines: readonly Reached[]): { readonly low: number; readonly high: number } {
  const going = lines.filter(({ isStopped }) => !isStopped);
  const counted = going.length > 0 ? going : lines;
  return {
    low: Math.min(...counted.map(({ low }) => low)),
    high: Math.max(...counted.map(({ high }) => high)),
  };
}
