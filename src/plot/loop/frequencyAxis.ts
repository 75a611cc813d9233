/** Least span that can be zoomed to, as a ratio of its ends. */
const MIN_RATIO = 1.25;

export interface FrequencyTick {
  readonly frequency: number;
  /** 1, 2, 5 or another digit times a power of ten. */
  readonly digit: number;
}

/** The logarithmic frequency axis that all Bode plots share, Hz: all of it, or the part that was zoomed to. */
export class FrequencyAxis {
  from = 1;
  to = 4000;
  #lowest = 1;
  #highest = 4000;

  /** What there is to be seen. A part that was zoomed to is kept as far as it lies inside. */
  setRange(lowest: number, highest: number): void {
    if (lowest === this.#lowest && highest === this.#highest) return;
    const whole = this.whole;
    this.#lowest = lowest;
    this.#highest = highest;
    if (whole) this.showAll();
    else this.#show(this.from, this.to / this.from);
  }

  get whole(): boolean {
    return this.from === this.#lowest && this.to === this.#highest;
  }

  showAll(): void {
    this.from = this.#lowest;
    this.to = this.#highest;
  }

  /** Share of the width at which a frequency stands; beyond 0 and 1 outside. */
  fraction(frequency: number): number {
    return Math.log(frequency / this.from) / Math.log(this.to / this.from);
  }

  frequencyAt(fraction: number): number {
    return this.from * (this.to / this.from) ** fraction;
  }

  /** Makes the span `factor` times as wide on the logarithmic scale about a fraction of the width. */
  zoom(factor: number, fraction: number): void {
    const about = this.frequencyAt(fraction);
    const ratio = (this.to / this.from) ** factor;
    this.#show(about * ratio ** -fraction, ratio);
  }

  /** Moves the span by a share of its width. */
  pan(share: number): void {
    const ratio = this.to / this.from;
    this.#show(this.from * ratio ** share, ratio);
  }

  /** Every digit times a power of ten in view, ascending. */
  ticks(): FrequencyTick[] {
    const found: FrequencyTick[] = [];
    for (let power = Math.floor(Math.log10(this.from)); 10 ** power <= this.to; power++) {
      for (let digit = 1; digit < 10; digit++) {
        const frequency = Number(`${digit}e${power}`);
        if (frequency >= this.from * (1 - 1e-9) && frequency <= this.to * (1 + 1e-9))
          found.push({ frequency, digit });
      }
    }
    return found;
  }

  #show(from: number, wanted: number): void {
    const ratio = Math.min(Math.max(wanted, MIN_RATIO), this.#highest / this.#lowest);
    this.from = Math.min(Math.max(from, this.#lowest), this.#highest / ratio);
    this.to = this.from * ratio;
    if (ratio === this.#highest / this.#lowest) this.showAll();
  }
}

/** Short text of a tick: 0.1, 20, 1k. */
export function tickText(frequency: number): string {
  return frequency >= 1000 ? `${Number((frequency / 1000).toPrecision(3))}k` : String(frequency);
}
