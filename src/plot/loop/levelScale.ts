import { linearScale, type Scale } from '../scale.ts';
import { multiplesOf } from '../ticks.ts';

/** What a vertical scale may look like. */
export interface LevelLimits {
  /** Distances that ticks may have, ascending. */
  readonly steps: readonly [finest: number, ...coarser: number[]];
  /** Shown at least, and at most, whatever the curves do. */
  readonly min: readonly [low: number, high: number];
  readonly max: readonly [low: number, high: number];
}

/** Smallest distance of two ticks: a line of text, as a multiple of the text size. */
const LINE = 1.3;
/** The scale closes in only when it would become smaller than this share of what it is. */
const CLOSE_IN = 0.7;

/**
 * A vertical scale of dB, degrees or decades whose ends lie on ticks; it opens at once and closes
 * in only when much is gained.
 */
export class LevelScale {
  low: number;
  high: number;
  step: number;
  #isFitted = false;
  readonly #limits: LevelLimits;

  constructor(limits: LevelLimits) {
    this.#limits = limits;
    [this.low, this.high] = limits.min;
    [this.step] = limits.steps;
  }

  /** Fits the curves' range on `height` pixels with text of `textSize`. */
  fit(dataLow: number, dataHigh: number, height: number, textSize: number): void {
    const { min, max, steps } = this.#limits;
    let low = Math.max(Math.min(dataLow, min[0]), max[0]);
    let high = Math.min(Math.max(dataHigh, min[1]), max[1]);
    if (this.#isFitted && high - low > CLOSE_IN * (this.high - this.low)) {
      low = Math.min(low, this.low);
      high = Math.max(high, this.high);
    }
    const lines = Math.max(2, height / (textSize * LINE));
    this.step = steps.find((step) => (high - low) / step <= lines) ?? Math.max(...steps);
    // A fine grid for the ends: a coarse step would waste half of a low plot.
    const [grid] = steps;
    this.low = Math.floor(low / grid + 1e-9) * grid;
    this.high = Math.ceil(high / grid - 1e-9) * grid;
    this.#isFitted = true;
  }

  /** From levels to pixels. */
  scale(foot: number, top: number): Scale {
    return linearScale(this.low, this.high, foot, top);
  }

  ticks(): number[] {
    return multiplesOf(this.step, this.low, this.high);
  }
}
