import { valueAt } from '../../../shared/core/at.ts';
import { flexibleModes, motorSideMass, translatingMotorMass } from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { E_OTHER, F1, F2, type State, V1, V2, X1, X2 } from '../state.ts';
import type { Store, Term } from '../term.ts';
import type { Base } from './base.ts';

/*
 * Flexible parts of the machine, each an appended mass on a spring of its own, on table or motor side (x_s, v_s):
 *
 *   k_f = m_f (2π f_f)²,  c_f = 2 D_f m_f 2π f_f
 *   F_f = k_f (x_s − x_f) + c_f (v_s − v_f)      on the part, −F_f on its side
 *   x_f' = v_f    v_f' = F_f/m_f − τ ab          τ = 1 on the table, m1t/m1 on the motor side
 *
 * m, N, kg, Hz. m_f is contained in the mass of its side, which has that much less of its own (inertia.ts), so what the axis weighs
 * and what a force accelerates slowly stay the same. x_f counts from where the part hangs at rest under its weight: that deflection is
 * left out, and its weight acts on its side (weight.ts). Stored: ½ k_f (x_s − x_f)² and ½ m_f v_f², by absolute speeds.
 * At f_f the part holds its side still: there the response has an anti-resonance, and a resonance above it.
 * Source: den Hartog, Mechanical Vibrations, 4th ed. 1956, 3.2 and 3.3.
 */
export class Modes implements Term {
  readonly acts: boolean;
  /** Sum of the forces on the parts of the motor side and of the table in the state evaluated last, N. */
  motorForce = 0;
  tableForce = 0;
  readonly #at: number = 0;
  readonly #count: number = 0;
  readonly #base: Base;
  readonly #onMotor: boolean[];
  readonly #mass: Float64Array;
  readonly #stiffness: Float64Array;
  readonly #damping: Float64Array;
  readonly #travelling: Float64Array;

  /** @param at where the states of the first of `count` parts stand */
  constructor(count: number, at: number, base: Base) {
    this.acts = count > 0;
    this.#at = at;
    this.#count = count;
    this.#base = base;
    this.#onMotor = new Array<boolean>(count).fill(false);
    [this.#mass, this.#stiffness, this.#damping, this.#travelling] = [0, 0, 0, 0].map(
      () => new Float64Array(count),
    ) as [Float64Array, Float64Array, Float64Array, Float64Array];
  }

  configure(p: Parameters): void {
    for (const [j, { side, mass, frequency, damping }] of flexibleModes(p).entries()) {
      const omega = 2 * Math.PI * frequency;
      this.#onMotor[j] = side === 'motor side';
      this.#mass[j] = mass;
      this.#stiffness[j] = mass * omega ** 2;
      this.#damping[j] = 2 * damping * mass * omega;
      this.#travelling[j] = side === 'motor side' ? translatingMotorMass(p) / motorSideMass(p) : 1;
    }
  }

  /** Of the derivatives that belong to it all but what a moving base adds, see `carry`. */
  evaluate(y: Readonly<State>, dy: State): void {
    this.motorForce = 0;
    this.tableForce = 0;
    for (let j = 0; j < this.#count; j++) {
      const at = this.#at + 2 * j;
      const onMotor = this.#onMotor[j] === true;
      const v = valueAt(y, at + 1);
      const apart = (onMotor ? y[X1] : y[X2]) - valueAt(y, at);
      const slip = (onMotor ? y[V1] : y[V2]) - v;
      const damper = valueAt(this.#damping, j) * slip;
      const force = valueAt(this.#stiffness, j) * apart + damper;
      if (onMotor) {
        dy[F1] -= force;
        this.motorForce += force;
      } else {
        dy[F2] -= force;
        this.tableForce += force;
      }
      dy[at] = v;
      dy[at + 1] = force / valueAt(this.#mass, j);
      dy[E_OTHER] += damper * slip;
    }
  }

  /** What the acceleration of the base, m/s², takes from the parts. */
  carry(dy: State, acceleration: number): void {
    for (let j = 0; j < this.#count; j++) {
      const at = this.#at + 2 * j + 1;
      dy[at] = valueAt(dy, at) - valueAt(this.#travelling, j) * acceleration;
    }
  }

  store(y: Readonly<State>, store: Store): void {
    const vb = this.#base.speed(y);
    for (let j = 0; j < this.#count; j++) {
      const at = this.#at + 2 * j;
      const apart = (this.#onMotor[j] === true ? y[X1] : y[X2]) - valueAt(y, at);
      const v = valueAt(y, at + 1);
      const travelling = valueAt(this.#travelling, j) * valueAt(this.#mass, j);
      store.energy += 0.5 * valueAt(this.#stiffness, j) * apart * apart;
      store.energy += 0.5 * travelling * (v + vb) ** 2;
      store.energy += 0.5 * (valueAt(this.#mass, j) - travelling) * v * v;
    }
  }

  /** All at rest, at position x. */
  place(y: State, x: number): void {
    for (let j = 0; j < this.#count; j++) y[this.#at + 2 * j] = x;
  }
}
