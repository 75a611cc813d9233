import { logScale } from '../scale.ts';
import { type DecadeTick, decadeTicks } from '../ticks.ts';

/** Smallest span that can be zoomed to, as a ratio of its ends. */
const MIN_RATIO = 1.25;

/**
 * The logarithmic frequency axis that all Bode plots share, Hz: all of it, or the part that was
 * zoomed to.
 */
export class FrequencyAxis {
  /** Places are shares of the width. */
  #scale = logScale(1, 4000, 0, 1);
  #lowest = 1;
  #highest = 4000;

  get from(): number {
    return this.#scale.from;
  }

  get to(): number {
    return this.#scale.to;
  }

  /** What there is to be seen. A part that was zoomed to is kept as far as it lies inside. */
  setRange(lowest: number, highest: number): void {
    if (lowest === this.#lowest && highest === this.#highest) return;
    const { isWhole } = this;
    this.#lowest = lowest;
    this.#highest = highest;
    if (isWhole) this.showAll();
    else this.#show(this.from, this.to / this.from);
  }

  get isWhole(): boolean {
    return this.from === this.#lowest && this.to === this.#highest;
  }

  showAll(): void {
    this.#scale = logScale(this.#lowest, this.#highest, 0, 1);
  }

  /** Share of the width at which a frequency lies; beyond 0 and 1 outside. */
  fraction(frequency: number): number {
    return this.#scale.at(frequency);
  }

  frequencyAt(fraction: number): number {
    return this.#scale.valueAt(fraction);
  }

  /**
   * Makes the span `factor` times as wide on the logarithmic scale about a fraction of the width.
   */
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

  /** Every digit times a power of ten in view, Hz, ascending. */
  ticks(): DecadeTick[] {
    return decadeTicks(this.from, this.to);
  }

  #show(from: number, wanted: number): void {
    const widest = this.#highest / this.#lowest;
    const ratio = Math.min(Math.max(wanted, MIN_RATIO), widest);
    if (ratio === widest) {
      this.showAll();
      return;
    }
    const start = Math.min(Math.max(from, this.#lowest), this.#highest / ratio);
    this.#scale = logScale(start, start * ratio, 0, 1);
  }
}

/** Short text of a tick: 0.1, 20, 1k. */
export function tickText(frequency: number): string {
  return frequency >= 1000 ? `${Number((frequency / 1000).toPrecision(3))}k` : String(frequency);
}
