import { fitFactor } from '../../shared/axis/field.ts';
import type { MotorConstants } from '../../shared/axis/motor.ts';
import { magnetFactor, resistanceFactor } from '../../shared/axis/temperature.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { CURRENTS, type Temperatures } from './state.ts';

/*
 * All motors on one amplifier, in the dq frame of the first; motor j sits δ_j off its electrical angle.
 *
 *   L di_d/dt = v_d − R i_d + ωL i_q − e_d        e_d = −(π/τ) ψ v sin(πδ/τ)
 *   L di_q/dt = v_q − R i_q − ωL i_d − e_q        e_q =  (π/τ) ψ v cos(πδ/τ)
 *   F = 1.5 (π/τ) ψ (i_q cos(πδ/τ) − i_d sin(πδ/τ))
 *   ψ = ψ20 [1 + α_B (T_mag − 20)] · fit · [1 + r6 cos(6πx/τ + φ6) + r12 cos(12πx/τ + φ12)] / √(1 + (i_q/i_sat)²)
 *
 * i in A (amplitude-invariant), v in V, x in m, v1 in m/s, ω = π v1/τ in rad/s. The same ψ in force and back-EMF makes
 * 1.5 (e_d i_d + e_q i_q) = F v exact. Source: Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed., ch. 11 and app. C.
 */
export class Windings {
  readonly count: number;
  /** Results of the last call of `derivative`: N, W, W. */
  force = 0;
  copperPower = 0;
  inputPower = 0;

  private readonly cos: Float64Array;
  private readonly sin: Float64Array;
  private perPitch = 0;
  private inductance = 0;
  private coldResistance = 0;
  private coldFlux = 0;
  private fit = 1;
  private resistance = 0;
  private flux = 0;
  private saturation = 0;
  private r6 = 0;
  private r12 = 0;
  private phi6 = 0;
  private phi12 = 0;
  private open = false;

  constructor(count: number) {
    this.count = count;
    this.cos = new Float64Array(count);
    this.sin = new Float64Array(count);
  }

  configure(p: Parameters, motor: MotorConstants): void {
    this.perPitch = Math.PI / motor.polePitch;
    this.inductance = motor.inductance;
    this.coldResistance = motor.resistance;
    this.coldFlux = motor.flux;
    this.fit = fitFactor(p, motor.polePitch);
    this.saturation = p.saturationCurrent > 0 ? 1 / p.saturationCurrent ** 2 : 0;
    this.r6 = p.ripple6;
    this.r12 = p.ripple12;
    this.phi6 = p.ripple6Phase;
    this.phi12 = p.ripple12Phase;
    this.open = p.drive === 'off';
    const offsets = [0, p.misalignment2, p.misalignment3, p.misalignment4];
    for (let j = 0; j < this.count; j++) {
      this.cos[j] = Math.cos(this.perPitch * offsets[j]!);
      this.sin[j] = Math.sin(this.perPitch * offsets[j]!);
    }
  }

  /** Resistance and flux at these temperatures; call after `configure`. */
  warm(p: Parameters, t: Temperatures): void {
    this.resistance = this.coldResistance * resistanceFactor(t.winding);
    this.flux = this.coldFlux * magnetFactor(p, t.carrier) * this.fit;
  }

  /** Writes the current derivatives of all motors under the voltages vd, vq, and the results above. */
  derivative(x1: number, v1: number, vd: number, vq: number, y: readonly number[], dy: number[]): void {
    this.force = 0;
    this.copperPower = 0;
    this.inputPower = 0;
    if (this.open) {
      for (let k = CURRENTS; k < CURRENTS + 2 * this.count; k++) dy[k] = 0;
      return;
    }
    const angle = 6 * this.perPitch * x1;
    const ripple = 1 + this.r6 * Math.cos(angle + this.phi6) + this.r12 * Math.cos(2 * angle + this.phi12);
    const omegaL = this.perPitch * v1 * this.inductance;
    for (let j = 0; j < this.count; j++) {
      const k = CURRENTS + 2 * j;
      const id = y[k]!;
      const iq = y[k + 1]!;
      const thrust = (this.perPitch * this.flux * ripple) / Math.sqrt(1 + iq * iq * this.saturation);
      const cos = this.cos[j]!;
      const sin = this.sin[j]!;
      dy[k] = (vd - this.resistance * id + omegaL * iq + thrust * sin * v1) / this.inductance;
      dy[k + 1] = (vq - this.resistance * iq - omegaL * id - thrust * cos * v1) / this.inductance;
      this.force += 1.5 * thrust * (iq * cos - id * sin);
      this.copperPower += 1.5 * this.resistance * (id * id + iq * iq);
      this.inputPower += 1.5 * (vd * id + vq * iq);
    }
  }

  /** Motor force at a state, N, for display: the same law as in `derivative`. */
  forceAt(x1: number, y: readonly number[], scratch: number[]): number {
    this.derivative(x1, 0, 0, 0, y, scratch);
    return this.force;
  }

  /** Magnetic energy of the winding currents, ¾ L Σ(i_d² + i_q²), J. */
  energy(y: readonly number[]): number {
    let squares = 0;
    for (let k = CURRENTS; k < CURRENTS + 2 * this.count; k++) squares += y[k]! ** 2;
    return 0.75 * this.inductance * squares;
  }
}
