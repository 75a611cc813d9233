import { stepAtLeast, tickRange } from '../ticks.ts';

/** Room above and below the data, as a share of its span. */
const MARGIN = 0.06;
/** The scale closes in only when it would become smaller than this share of what it is. */
const CLOSE_IN = 0.5;
/** Smallest distance of two ticks: a line of text, as a multiple of the text size. */
const LINE = 1.2;

export interface ScaleLimits {
  /** Smallest span, SI: below it the scale shows that nothing moves. */
  readonly minSpan: number;
  /** Whether zero is always on the scale. */
  readonly zero: boolean;
}

/**
 * A vertical scale that follows its data: it opens at once, so that nothing leaves it, and closes
 * in only when much would be gained, so that it does not flicker.
 */
export class VerticalScale {
  low = 0;
  high = 1;
  /** Distance of two ticks, of the row 1, 2, 5, 10. */
  step = 1;
  readonly #limits: ScaleLimits;
  #fitted = false;

  constructor(limits: ScaleLimits) {
    this.#limits = limits;
  }

  /**
   * Fits the data range [low, high] on `height` pixels with text of `textSize`; whether the scale
   * has changed.
   */
  fit(dataLow: number, dataHigh: number, height: number, textSize: number): boolean {
    const lines = Math.max(2, height / (textSize * LINE));
    const tight = this.#around(dataLow, dataHigh, lines);
    const low = Math.min(tight.low, this.low);
    const high = Math.max(tight.high, this.high);
    const closeIn = !this.#fitted || tight.high - tight.low <= CLOSE_IN * (high - low);
    return closeIn ? this.#take(tight.low, tight.high, lines) : this.#take(low, high, lines);
  }

  #take(low: number, high: number, lines: number): boolean {
    const step = withTwoTicks(low, high, stepAtLeast((high - low) / lines));
    const changed = low !== this.low || high !== this.high || step !== this.step;
    this.low = low;
    this.high = high;
    this.step = step;
    this.#fitted = true;
    return changed;
  }

  #around(dataLow: number, dataHigh: number, lines: number): { low: number; high: number } {
    const { zero, minSpan } = this.#limits;
    const low = zero ? Math.min(dataLow, 0) : dataLow;
    const high = zero ? Math.max(dataHigh, 0) : dataHigh;
    const margin = MARGIN * (high - low) + Math.max(0, minSpan - (high - low)) / 2;
    // Whole fifths of a step keep the edges from creeping with the data.
    const grid = stepAtLeast((high - low + 2 * margin) / lines) / 5;
    return { low: Math.floor((low - margin) / grid) * grid, high: Math.ceil((high + margin) / grid) * grid };
  }
}

/** One tick tells no size: the step shrinks until the range holds two. */
function withTwoTicks(low: number, high: number, step: number): number {
  const [first, last] = tickRange(low, high, step);
  return last > first ? step : withTwoTicks(low, high, stepAtLeast(0.4 * step));
}
