/** ms */
const INTERVAL = 250;

/**
 * How often it is told how far something is: what is told anew is drawn anew and read aloud, and a computer at work has no time for more than
 * anyone takes in.
 */
export class Pacing {
  #last = Number.NEGATIVE_INFINITY;

  /** Whether it is to be told now: at first, and then once an interval is over. */
  isDue(): boolean {
    const now = performance.now();
    if (now - this.#last < INTERVAL) return false;
    this.#last = now;
    return true;
  }
}
