import { tickRange } from '../ticks.ts';

/** What a vertical scale may look like. */
export interface LevelLimits {
  /** Distances that ticks may have, ascending. */
  readonly steps: readonly number[];
  /** Shown at least, and at most, whatever the curves do. */
  readonly min: readonly [low: number, high: number];
  readonly max: readonly [low: number, high: number];
}

/** Least distance of two ticks: a line of text, as a multiple of the text size. */
const LINE = 1.3;
/** The scale closes in only when it would become smaller than this share of what it is. */
const CLOSE_IN = 0.7;

/** A vertical scale of dB, degrees or decades whose ends stand on ticks; it opens at once and closes in only when much is gained. */
export class LevelScale {
  low: number;
  high: number;
  step: number;
  #fitted = false;
  readonly #limits: LevelLimits;

  constructor(limits: LevelLimits) {
    this.#limits = limits;
    [this.low, this.high] = limits.min;
    this.step = limits.steps[0]!;
  }

  /** Fits the curves' range on `height` pixels with text of `textSize`. */
  fit(dataLow: number, dataHigh: number, height: number, textSize: number): void {
    const { min, max, steps } = this.#limits;
    let low = Math.max(Math.min(dataLow, min[0]), max[0]);
    let high = Math.min(Math.max(dataHigh, min[1]), max[1]);
    if (this.#fitted && high - low > CLOSE_IN * (this.high - this.low)) {
      low = Math.min(low, this.low);
      high = Math.max(high, this.high);
    }
    const lines = Math.max(2, height / (textSize * LINE));
    this.step = steps.find((step) => (high - low) / step <= lines) ?? steps[steps.length - 1]!;
    // A fine grid for the ends: a coarse step would waste half of a low plot.
    const grid = steps[0]!;
    this.low = Math.floor(low / grid + 1e-9) * grid;
    this.high = Math.ceil(high / grid - 1e-9) * grid;
    this.#fitted = true;
  }

  /** Share of the height from the top at which a level stands; beyond 0 and 1 outside. */
  fraction(level: number): number {
    return (this.high - level) / (this.high - this.low);
  }

  levelAt(fraction: number): number {
    return this.high - fraction * (this.high - this.low);
  }

  ticks(): number[] {
    const [first, last] = tickRange(this.low, this.high, this.step);
    return Array.from({ length: last - first + 1 }, (_, k) => (first + k) * this.step);
  }
}
