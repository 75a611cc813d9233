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

  #used: number;

  /** `used`: share of the overload allowance that is gone at the start, w. */
  constructor(used = 0) {
    this.#used = used;
  }

  step(p: Parameters, dt: number, currentSquared: number, windingTemperature: number): void {
    const steady = p.continuousCurrent ** 2;
    const extra = Math.max(p.peakCurrent ** 2 - steady, 0);
    if (extra > 0)
      this.#used = Math.max(this.#used + ((currentSquared - steady) * dt) / (extra * p.overloadTime), 0);
    const overload = Math.sqrt(
      Math.min(steady, p.peakCurrent ** 2) + extra * clamp01((1 - this.#used) / BLEND),
    );
    const heat = temperatureFoldback(p, windingTemperature);
    this.amplitude = overload * heat;
    this.overloaded = this.#used > 1 - BLEND;
    this.hot = heat < 1;
  }
}

/** Share of the current limit that a winding of this temperature leaves: 1 up to T_f, 0 from T_max on. */
export function temperatureFoldback(p: Parameters, winding: number): number {
  return clamp01((p.windingLimit - winding) / (p.windingLimit - p.foldbackTemperature));
}

function clamp01(value: number): number {
  return Math.min(Math.max(value, 0), 1);
}
