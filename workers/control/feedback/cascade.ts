import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { Feedback } from './feedback.ts';

/*
 * A proportional position loop around a PI velocity loop:
 *
 *   v*  = Kv e + w_v v_set, within ±v_lim
 *   v_f += Tp/(T_vc + Tp) (v* − v_f)
 *   I  += Kvel (Tp/Tn) (v_f − v̂)
 *   F   = Kvel (v_f − v̂) + I
 */
export class Cascade implements Feedback {
  #kv = 0;
  #kvel = 0;
  #share = 0;
  #feedforward = 0;
  #filter = 1;
  #limit = 0;
  #command = 0;
  #speedError = 0;
  #integral = 0;
  #integralBefore = 0;

  configure(p: Parameters, period: number): void {
    this.#kv = p.positionLoopGain;
    this.#kvel = p.velocityGain;
    this.#share = p.resetTime > 0 ? (p.velocityGain * period) / p.resetTime : 0;
    this.#feedforward = p.velocityFeedforward;
    this.#filter = period / (p.velocityCommandFilter + period);
    this.#limit = p.velocityCommandLimit;
  }

  start(force: number): void {
    this.#command = 0;
    this.#integral = force;
  }

  step(error: number, setSpeed: number, speedEstimate: number): number {
    const wanted = this.#kv * error + this.#feedforward * setSpeed;
    const command = Math.min(Math.max(wanted, -this.#limit), this.#limit);
    this.#command += this.#filter * (command - this.#command);
    this.#speedError = this.#command - speedEstimate;
    this.#integralBefore = this.#integral;
    this.#integral += this.#share * this.#speedError;
    return this.#kvel * this.#speedError + this.#integral;
  }

  holdIntegral(wanted: number): void {
    if (this.#speedError * wanted > 0) this.#integral = this.#integralBefore;
  }
}
