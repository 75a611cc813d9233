/** Numbers change at most this often, so that they can be read, s. */
const INTERVAL = 0.1;

/** When the numbers of a view are written: all at one moment, so that no two of them tell of different times. */
export class NumberClock {
  #age = INTERVAL;

  /** A display refresh, `elapsed` seconds after the last. Whether the numbers are written with it. */
  refresh(elapsed: number): boolean {
    this.#age += elapsed;
    if (this.#age < INTERVAL) return false;
    this.#age = 0;
    return true;
  }
}
