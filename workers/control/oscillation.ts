/** Swings between the limits that follow each other within this time belong together, s. */
const TOGETHER = 0.05;
/** So many of them are no longer a hard move but a loop that feeds itself. */
const SWINGS = 16;

/**
 * Watches a drive swing from one limit of current or voltage to the other. An unstable loop need not run away: held by its limits it may shake
 * at a few micrometres without end, well inside the following-error limit.
 */
export class OscillationWatch {
  #side = 0;
  #since = Number.NEGATIVE_INFINITY;
  #swings = 0;
  #first = 0;

  /** `side` is the limit the drive is at now: 1, −1, or 0 for none. Returns true when the swinging has gone on too long. */
  step(time: number, side: number): boolean {
    if (side === 0 || side === this.#side) return false;
    this.#swings = time - this.#since < TOGETHER ? this.#swings + 1 : 1;
    if (this.#swings === 1) this.#first = time;
    this.#side = side;
    this.#since = time;
    return this.#swings >= SWINGS;
  }

  /** Of the swings that belong together, Hz: two to a period. */
  get frequency(): number {
    return (this.#swings - 1) / 2 / (this.#since - this.#first);
  }
}
