import { at } from '../../shared/core/at.ts';

/**
 * How finely the stage is drawn: a share of the screen's own resolution; on every how manyeth refresh, so that the rest of
 * the page keeps its pace where pictures are slow; and with every how manyeth of these the shadow moves.
 */
interface Quality {
  readonly resolution: number;
  readonly every: number;
  readonly shadowEvery: number;
}

/** From the best down. */
export const QUALITIES: readonly Quality[] = [
  { resolution: 1, every: 1, shadowEvery: 1 },
  { resolution: 0.85, every: 1, shadowEvery: 3 },
  { resolution: 0.8, every: 2, shadowEvery: 4 },
  { resolution: 0.75, every: 3, shadowEvery: 6 },
  { resolution: 0.7, every: 5, shadowEvery: 8 },
];

/** Times between refreshes, s: slower than this steps down, faster than this may step up. */
const SLOW = 1 / 32;
const FAST = 1 / 50;
/** Seconds of evidence for a step down, for the first step up; a step up that failed doubles the latter. */
const DOUBT = 0.5;
const TRUST = 4;
/** A longer gap counts as this: one alone is a pause, many in a row are a slow display. */
const GAP = 0.2;

/** Chooses the quality a display can keep up with, from the times between refreshes. */
export class QualityGovernor {
  #mean = 1 / 60;
  #slowFor = 0;
  #fastFor = 0;
  #trust = TRUST;
  #raised = false;

  constructor(public level: number) {}

  /** `sinceLast` in seconds. Returns whether the level changed. */
  refresh(sinceLast: number): boolean {
    const elapsed = Math.min(sinceLast, GAP);
    this.#mean += 0.15 * (elapsed - this.#mean);
    this.#slowFor = this.#mean > SLOW ? this.#slowFor + elapsed : 0;
    this.#fastFor = this.#mean < FAST ? this.#fastFor + elapsed : 0;
    if (this.#slowFor > DOUBT && this.level < QUALITIES.length - 1) {
      if (this.#raised) this.#trust *= 2;
      this.#raised = false;
      return this.#go(1);
    }
    if (this.#fastFor > this.#trust && this.level > 0) {
      this.#raised = true;
      return this.#go(-1);
    }
    return false;
  }

  get quality(): Quality {
    return at(QUALITIES, this.level);
  }

  #go(step: number): true {
    this.level += step;
    this.#slowFor = this.#fastFor = 0;
    this.#mean = 1 / 40;
    return true;
  }
}
