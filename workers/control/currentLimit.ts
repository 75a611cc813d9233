import type { Parameters } from '../../shared/core/parameters/table.ts';

/** The last tenth of the overload allowance is given back gradually, so that the limit does not chatter. */
export const BLEND = 0.1;

/*
 * How much current the amplifier lets through, A of amplitude:
 *
 *   w' = (i² − i_c²)/((i_pk² − i_c²) t_pk), w ≥ 0               share of the overload allowance that is used up
 *   i_fold² = i_c² + (i_pk² − i_c²) clamp((1 − w)/0.1, 0, 1)
 *   i_lim = i_fold · clamp((T_max − T_w)/(T_max − T_f), 0, 1)
 */
export class CurrentLimit {
  /** The present limit, A, and what lowers it. */
  amplitude = 0;
  overloaded = false;
  hot = false;

  #used = 0;
  #foldback: TemperatureFoldback;
  /** i_c², what i_pk² is above it, and the smaller of the two, A². */
  #steady = 0;
  #extra = 0;
  #least = 0;
  #overloadTime = 0;

  /** `used`: share of the overload allowance that is gone at the start, w. */
  constructor(p: Parameters, used = 0) {
    this.#used = used;
    this.#foldback = new TemperatureFoldback(p);
    this.configure(p);
  }

  configure(p: Parameters): void {
    this.#foldback = new TemperatureFoldback(p);
    this.#steady = p.continuousCurrent ** 2;
    this.#extra = Math.max(p.peakCurrent ** 2 - this.#steady, 0);
    this.#least = Math.min(this.#steady, p.peakCurrent ** 2);
    this.#overloadTime = p.overloadTime;
  }

  step(dt: number, currentSquared: number, windingTemperature: number): void {
    const steady = this.#steady;
    const extra = this.#extra;
    if (extra > 0)
      this.#used = Math.max(this.#used + ((currentSquared - steady) * dt) / (extra * this.#overloadTime), 0);
    const overload = Math.sqrt(this.#least + extra * clamp01((1 - this.#used) / BLEND));
    const heat = this.#foldback.share(windingTemperature);
    this.amplitude = overload * heat;
    this.overloaded = this.#used > 1 - BLEND;
    this.hot = heat < 1;
  }
}

/** What a warm winding leaves of the current limit. */
export class TemperatureFoldback {
  readonly #limit: number = 0;
  readonly #range: number = 0;

  constructor(p: Parameters) {
    this.#limit = p.windingLimit;
    this.#range = p.windingLimit - p.foldbackTemperature;
  }

  /** Share of the limit: 1 up to T_f, 0 from T_max on. */
  share(winding: number): number {
    return clamp01((this.#limit - winding) / this.#range);
  }
}

function clamp01(value: number): number {
  return Math.min(Math.max(value, 0), 1);
}
