/** Numbers change at most this often, so that they can be read, s. */
const READABLE = 0.1;
/** And how far something is, so often: each telling is drawn anew and read aloud, and a computer at work has no time for it. */
export const TOLD = 0.5;

/** When the numbers of a view are written: all at one moment, so that no two of them tell of different times. */
export class NumberClock {
  readonly #interval: number;
  #age: number;
  #asked = Number.NEGATIVE_INFINITY;

  /** @param interval between two writings at least, s */
  constructor(interval = READABLE) {
    this.#interval = interval;
    this.#age = interval;
  }

  /** A display refresh, `elapsed` seconds after the last. Whether the numbers are written with it. */
  refresh(elapsed: number): boolean {
    this.#age += elapsed;
    if (this.#age < this.#interval) return false;
    this.#age = 0;
    return true;
  }

  /** The same for whatever comes at no fixed pace, by the clock of the page: whether it is written now. */
  isDue(): boolean {
    const now = performance.now();
    const elapsed = (now - this.#asked) / 1000;
    this.#asked = now;
    return this.refresh(elapsed);
  }
}
