/** Peak and root mean square of a series, by magnitude. */
export class Tally {
  count = 0;
  peak = 0;
  #sum = 0;

  add(value: number): void {
    this.count++;
    this.peak = Math.max(this.peak, Math.abs(value));
    this.#sum += value * value;
  }

  /** 0 of an empty series. */
  get rms(): number {
    return this.count > 0 ? Math.sqrt(this.#sum / this.count) : 0;
  }

  clear(): void {
    this.count = 0;
    this.peak = 0;
    this.#sum = 0;
  }
}

/** Tally of a series, and of the part of it that was begun last. */
export class PartedTally {
  readonly whole = new Tally();
  readonly part = new Tally();

  add(value: number): void {
    this.whole.add(value);
    this.part.add(value);
  }
}
