import { fitFactor } from '../../../shared/axis/field.ts';
import { motorConstants, motorOffsets } from '../../../shared/axis/motor.ts';
import { rippleTerms } from '../../../shared/axis/periodic.ts';
import { MagnetWarmth, resistanceFactor } from '../../../shared/axis/temperature.ts';
import { valueAt } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { CURRENTS, E_COPPER, E_IN, F1, type State, type Temperatures, V1, X1 } from '../state.ts';
import type { Store, Term } from '../term.ts';
import { Waves } from '../waves.ts';

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
export class Windings implements Term {
  /** Held over the period, V. */
  voltageD = 0;
  voltageQ = 0;

  readonly #count: number = 0;
  /** cos and sin of πδ/τ of each motor. */
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;
  #perPitch = 0;
  #inductance = 0;
  #coldResistance = 0;
  #coldFlux = 0;
  #fit = 1;
  #magnet: MagnetWarmth | null = null;
  #resistance = 0;
  #flux = 0;
  #saturation = 0;
  #ripple = new Waves();
  #open = false;

  constructor(count: number) {
    this.#count = count;
    this.#cos = new Float64Array(count);
    this.#sin = new Float64Array(count);
  }

  configure(p: Parameters): void {
    const motor = motorConstants(p);
    this.#perPitch = Math.PI / motor.polePitch;
    this.#inductance = motor.inductance;
    this.#coldResistance = motor.resistance;
    this.#coldFlux = motor.flux;
    this.#fit = fitFactor(p, motor.polePitch);
    this.#magnet = new MagnetWarmth(p);
    this.#saturation = p.saturationCurrent > 0 ? 1 / p.saturationCurrent ** 2 : 0;
    const waves = rippleTerms(p).filter(({ amplitude }) => amplitude > 0);
    this.#ripple = new Waves(
      waves.map(({ amplitude, order, phase }) => ({
        amplitude,
        rate: order * this.#perPitch,
        phase: phase + Math.PI / 2,
      })),
    );
    this.#open = p.drive === 'off';
    for (const [j, offset] of motorOffsets(p).entries()) {
      this.#cos[j] = Math.cos(this.#perPitch * offset);
      this.#sin[j] = Math.sin(this.#perPitch * offset);
    }
  }

  /** Takes temperatures, which move while it runs. Called after `configure`, too. */
  warm(t: Temperatures): void {
    this.#resistance = this.#coldResistance * resistanceFactor(t.winding);
    this.#flux = this.#coldFlux * (this.#magnet?.factor(t.carrier) ?? 1) * this.#fit;
  }

  /** A period begins in the state y. */
  begin(y: Readonly<State>): void {
    this.#ripple.follow(y[X1]);
  }

  evaluate(y: Readonly<State>, dy: State): void {
    if (this.#open) {
      for (let k = CURRENTS; k < CURRENTS + 2 * this.#count; k++) dy[k] = 0;
      return;
    }
    const v1 = y[V1];
    const vd = this.voltageD;
    const vq = this.voltageQ;
    const ripple = 1 + this.#ripple.at(y[X1]);
    const omegaL = this.#perPitch * v1 * this.#inductance;
    let force = 0;
    let copper = 0;
    let supplied = 0;
    let j = 0;
    do {
      const d = CURRENTS + 2 * j;
      const q = d + 1;
      const cos = valueAt(this.#cos, j);
      const sin = valueAt(this.#sin, j);
      const id = valueAt(y, d);
      const iq = valueAt(y, q);
      const thrust = this.#thrust(ripple, iq);
      dy[d] = (vd - this.#resistance * id + omegaL * iq + thrust * sin * v1) / this.#inductance;
      dy[q] = (vq - this.#resistance * iq - omegaL * id - thrust * cos * v1) / this.#inductance;
      force += 1.5 * thrust * (iq * cos - id * sin);
      copper += 1.5 * this.#resistance * (id * id + iq * iq);
      supplied += 1.5 * (vd * id + vq * iq);
    } while (++j < this.#count);
    dy[F1] += force;
    dy[E_COPPER] += copper;
    dy[E_IN] += supplied;
  }

  /** Force of all motors on the motor side, N. */
  force(y: Readonly<State>): number {
    if (this.#open) return 0;
    const ripple = 1 + this.#ripple.at(y[X1]);
    let force = 0;
    let j = 0;
    do {
      const id = valueAt(y, CURRENTS + 2 * j);
      const iq = valueAt(y, CURRENTS + 2 * j + 1);
      force += 1.5 * this.#thrust(ripple, iq) * (iq * valueAt(this.#cos, j) - id * valueAt(this.#sin, j));
    } while (++j < this.#count);
    return force;
  }

  /** In the field of the coils: ¾ L Σ(i_d² + i_q²). */
  store(y: Readonly<State>, store: Store): void {
    let squares = 0;
    let k = CURRENTS;
    do squares += valueAt(y, k) ** 2;
    while (++k < CURRENTS + 2 * this.#count);
    store.energy += 0.75 * this.#inductance * squares;
  }

  /** 2/3 of the force per ampere: (π/τ) ψ. */
  #thrust(ripple: number, iq: number): number {
    return (this.#perPitch * this.#flux * ripple) / Math.sqrt(1 + iq * iq * this.#saturation);
  }
}
