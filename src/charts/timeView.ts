/** Narrowest and widest window, s: a few position-loop samples, and all that the history keeps. */
export const MIN_SPAN = 5e-4;
export const MAX_SPAN = 7200;

/**
 * The window of simulated time that all rows show. Live, it follows the newest sample; held, it
 * stays where a person has put it while the run goes on. Frozen, only the charts stop in time.
 */
export class TimeView {
  from = 0;
  to = 1;
  #span: number;
  #heldAt: number | null = null;
  #frozenAt: number | null = null;
  #oldest = 0;
  #latest = 0;

  constructor(span: number) {
    this.#span = span;
  }

  get live(): boolean {
    return this.#heldAt === null;
  }

  get frozen(): boolean {
    return this.#frozenAt !== null;
  }

  /**
   * Moves the window on to what the history holds now. A live window moves by whole columns, so
   * that what it shows is drawn the same on its way.
   */
  update(oldest: number, latest: number, columns: number): void {
    this.#oldest = oldest;
    this.#latest = this.#frozenAt ?? latest;
    const column = this.#span / columns;
    const end = this.#heldAt ?? Math.max(this.#latest, oldest + this.#span);
    this.to = Math.ceil(end / column - 1e-6) * column;
    this.from = this.to - this.#span;
  }

  /** How much time is shown, s. */
  get span(): number {
    return this.#span;
  }

  /** Time at a fraction of the width, s. */
  timeAt(fraction: number): number {
    return this.from + fraction * this.#span;
  }

  /** Where the newest sample lies, as a fraction of the width; at an end if it lies beyond. */
  get newest(): number {
    return clamp((this.#latest - this.from) / this.#span, 0, 1);
  }

  setSpan(span: number): void {
    this.#span = clamp(span, MIN_SPAN, MAX_SPAN);
  }

  /**
   * Makes the window `factor` times as long about a fraction of the width; a live one keeps its
   * newest edge.
   */
  zoom(factor: number, fraction: number): void {
    const about = this.timeAt(fraction);
    this.setSpan(this.#span * factor);
    if (!this.live) this.#holdAt(about + (1 - fraction) * this.#span);
  }

  /** Moves the window by a share of its length; moved to the newest sample it is live again. */
  pan(share: number): void {
    const end = this.to + share * this.#span;
    if (share > 0 && end >= this.#latest) this.followLive();
    else this.#holdAt(end);
  }

  /** Shows what now lies between two fractions of the width. */
  select(a: number, b: number): void {
    const end = this.timeAt(Math.max(a, b));
    this.setSpan(Math.abs(b - a) * this.#span);
    this.#holdAt(end);
  }

  hold(): void {
    this.#holdAt(this.to);
  }

  followLive(): void {
    this.#heldAt = null;
  }

  freeze(frozen: boolean): void {
    this.#frozenAt = frozen ? this.#latest : null;
  }

  /**
   * Another run: the moments that were held or frozen belong to the old one. Frozen, it waits at
   * the start.
   */
  restart(): void {
    this.#heldAt = null;
    if (this.frozen) this.#frozenAt = 0;
  }

  /** Never past the newest sample, and never wholly before the oldest. */
  #holdAt(end: number): void {
    const first = Math.min(this.#oldest + this.#span, this.#latest);
    this.#heldAt = clamp(end, first, Math.max(this.#latest, this.#oldest + this.#span));
  }
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
