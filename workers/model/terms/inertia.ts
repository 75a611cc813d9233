import {
  flexibleMass,
  loadSideMass,
  motorSideMass,
  translatingMotorMass,
} from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { F1, F2, type State, V1, V2, X1, X2 } from '../state.ts';
import type { Store, Term } from '../term.ts';
import type { Base } from './base.ts';
import type { Modes } from './modes.ts';

/*
 * What the sums of all forces do to the motor side (1), the table (2) and the base (b); F_out is the part that comes from outside:
 *
 *   x1' = v1    m1* v1' = F1 − τ m1* ab       x2' = v2    m2* v2' = F2 − m2* ab       τ = m1t/m1
 *   (m_b + τ m1r) ab = F_out − τ (F1 + F_f1) − F2 − F_f2        0 with a fixed base
 *
 * m1* and m2* are m1 and m2 less the flexible parts on that side, F_f1 and F_f2 the forces on these (modes.ts).
 * m1 = m1t + m1r: what travels with the motor, and the rotation of a screw, which has inertia but neither weight nor thrust on the base.
 * Positions and speeds of motor and table are relative to the base. Stored: ½ m v², by absolute speeds.
 * Source: Newton's law for each body, and for all of them together.
 */
export class Inertia implements Term {
  readonly #base: Base;
  readonly #modes: Modes;
  /** m1*, m2*, and the part of m1* that travels. */
  #m1 = 1;
  #m1t = 1;
  #m2 = 1;
  /** τ, and m_b + τ m1r. */
  #travelling = 1;
  #mass = 1;

  constructor(base: Base, modes: Modes) {
    this.#base = base;
    this.#modes = modes;
  }

  configure(p: Parameters): void {
    const m1 = motorSideMass(p);
    const m1t = translatingMotorMass(p);
    const flexing = flexibleMass(p, 'motor side');
    this.#travelling = m1t / m1;
    this.#m1 = m1 - flexing;
    this.#m1t = m1t - this.#travelling * flexing;
    this.#m2 = loadSideMass(p) - flexibleMass(p, 'table');
    this.#mass = p.baseMass + this.#travelling * (m1 - m1t);
  }

  evaluate(y: Readonly<State>, dy: State): void {
    const f1 = dy[F1];
    const f2 = dy[F2];
    const ab = this.#base.moves ? this.#accelerateBase(dy, f1, f2) : 0;
    dy[X1] = y[V1];
    dy[V1] = (f1 - this.#m1t * ab) / this.#m1;
    dy[X2] = y[V2];
    dy[V2] = f2 / this.#m2 - ab;
  }

  store(y: Readonly<State>, store: Store): void {
    const vb = this.#base.moves ? this.#base.speed(y) : 0;
    store.energy += 0.5 * this.#m1t * (y[V1] + vb) ** 2;
    store.energy += 0.5 * (this.#m1 - this.#m1t) * y[V1] ** 2;
    store.energy += 0.5 * this.#m2 * (y[V2] + vb) ** 2;
  }

  #accelerateBase(dy: State, f1: number, f2: number): number {
    const modes = this.#modes;
    const onMotor = modes.acts ? f1 + modes.motorForce : f1;
    const onTable = modes.acts ? f2 + modes.tableForce : f2;
    const ab = (this.#base.takeFromOutside() - this.#travelling * onMotor - onTable) / this.#mass;
    this.#base.accelerate(dy, ab);
    if (modes.acts) modes.carry(dy, ab);
    return ab;
  }
}
