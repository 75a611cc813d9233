import { motorConstants, voltageLimit } from '../../shared/axis/motor.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';

/*
 * PI on d and q with pole cancellation, decoupling and back-EMF feedforward, on the summed currents of N motors in parallel:
 *
 *   Kp = 2π f_bw L/N     Ki = 2π f_bw R20/N     i_d* = 0     ω̂ = π v̂/τ
 *   v_d = −Kp i_d + I_d − ω̂ (L/N) i_q
 *   v_q = Kp (i_q* − i_q) + I_q + ω̂ (L/N) i_d + (π/τ) ψ20 v̂
 *
 * V, A. The vector is shortened to V_dc/√3, the linear range of space-vector modulation (Holmes & Lipo, Pulse Width Modulation for
 * Power Converters, 2003); while it is, both integrators hold.
 */
export class CurrentLoop {
  /** Results of the last `step`, V. */
  voltageD = 0;
  voltageQ = 0;
  limited = false;

  #integralD = 0;
  #integralQ = 0;
  #kp = 0;
  #kiTs = 0;
  #inductance = 0;
  #perPitch = 0;
  #flux = 0;
  #limit = 0;

  configure(p: Parameters): void {
    const motor = motorConstants(p);
    const omega = 2 * Math.PI * p.currentBandwidth;
    this.#inductance = motor.inductance / p.motorCount;
    this.#kp = omega * this.#inductance;
    this.#kiTs = (omega * motor.resistance) / p.motorCount / p.currentRate;
    this.#perPitch = Math.PI / motor.polePitch;
    this.#flux = motor.flux;
    this.#limit = voltageLimit(p);
  }

  reset(): void {
    this.#integralD = 0;
    this.#integralQ = 0;
    this.voltageD = 0;
    this.voltageQ = 0;
    this.limited = false;
  }

  /** One current-loop period: command and samples in A, estimated speed in m/s. */
  step(command: number, id: number, iq: number, speed: number): void {
    const errorQ = command - iq;
    const stepD = -this.#kiTs * id;
    const stepQ = this.#kiTs * errorQ;
    const omegaL = this.#perPitch * speed * this.#inductance;
    let vd = -this.#kp * id + this.#integralD + stepD - omegaL * iq;
    let vq = this.#kp * errorQ + this.#integralQ + stepQ + omegaL * id + this.#perPitch * this.#flux * speed;
    // Not Math.hypot in code of every tick: it guards against magnitudes that do not occur, and takes ten times as long.
    const amplitude = Math.sqrt(vd * vd + vq * vq);
    this.limited = amplitude > this.#limit;
    if (this.limited) {
      vd *= this.#limit / amplitude;
      vq *= this.#limit / amplitude;
    } else {
      this.#integralD += stepD;
      this.#integralQ += stepQ;
    }
    this.voltageD = vd;
    this.voltageQ = vq;
  }
}
