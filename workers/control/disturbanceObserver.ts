import type { Parameters } from '../../shared/core/parameters/table.ts';

/** Weight of a new value in the observer's filter of bandwidth f_o at a sample Tp: a = 1 − exp(−2π f_o Tp). */
export function observerWeight({ observerBandwidth }: Pick<Parameters, 'observerBandwidth'>, period: number) {
  return -Math.expm1(-2 * Math.PI * observerBandwidth * period);
}

/*
 * Load force from what was commanded and what the table did, low-passed at f_o:
 *
 *   d̂ += a (F_before − F_known − M_o (v̂ − v̂_before)/Tp − d̂)
 *
 * F_before is the force commanded one sample ago, as far as the current limit let it through; F_known the part of it that carries what is
 * known beside the mass: drag, friction, cogging, weight. Without it that would count as a load too, and be cancelled twice. Adding d̂ to the
 * command cancels the load below f_o. Source: Ohnishi, Shibata, Murakami, Motion control for advanced mechatronics, IEEE/ASME Trans. Mechatronics 1(1), 1996
 * (from memory).
 */
export class DisturbanceObserver {
  #weight = 0;
  #massPerPeriod = 0;
  #on = false;
  #lastSpeed = 0;
  #estimate = 0;

  configure(p: Parameters, period: number): void {
    this.#on = p.observer;
    this.#weight = observerWeight(p, period);
    this.#massPerPeriod = p.observerMass / period;
    if (!p.observer) this.#estimate = 0;
  }

  reset(): void {
    this.#lastSpeed = 0;
    this.#estimate = 0;
  }

  /** Force that cancels the load, N; 0 while the observer is off. `forceBefore`: less what was known, N. */
  step(forceBefore: number, speedEstimate: number): number {
    if (!this.#on) return 0;
    const unexplained = forceBefore - this.#massPerPeriod * (speedEstimate - this.#lastSpeed);
    this.#estimate += this.#weight * (unexplained - this.#estimate);
    this.#lastSpeed = speedEstimate;
    return this.#estimate;
  }
}
