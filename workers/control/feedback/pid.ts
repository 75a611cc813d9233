import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { Feedback } from './feedback.ts';

/*
 * PID on position:
 *
 *   I += Ki Tp e
 *   F  = Kp e + I + Kd (v_set − v̂)
 */
export class Pid implements Feedback {
  #kp = 0;
  #kiTp = 0;
  #kd = 0;
  #error = 0;
  #integral = 0;
  #integralBefore = 0;

  configure(p: Parameters, period: number): void {
    this.#kp = p.Kp;
    this.#kiTp = p.Ki * period;
    this.#kd = p.Kd;
  }

  start(force: number): void {
    this.#integral = force;
  }

  step(error: number, setSpeed: number, speedEstimate: number): number {
    this.#error = error;
    this.#integralBefore = this.#integral;
    this.#integral += this.#kiTp * error;
    return this.#kp * error + this.#integral + this.#kd * (setSpeed - speedEstimate);
  }

  holdIntegral(wanted: number): void {
    if (this.#error * wanted > 0) this.#integral = this.#integralBefore;
  }
}
