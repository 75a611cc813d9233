import { loadSideMass, motorSideMass, translatingMotorMass } from '../../../shared/axis/motor.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { F1, F2, type State, V1, V2, X1, X2 } from '../state.ts';
import type { Store, Term } from '../term.ts';
import type { Base } from './base.ts';

/*
 * What the sums of all forces do to the motor side (1), the table (2) and the base (b); F_out is the part that comes from outside:
 *
 *   x1' = v1    m1 v1' = F1 − m1t ab        x2' = v2    m2 v2' = F2 − m2 ab
 *   (m_b + m1t m1r/m1) ab = F_out − (m1t/m1) F1 − F2        0 with a fixed base
 *
 * m1 = m1t + m1r: what travels with the motor, and the rotation of a screw, which has inertia but neither weight nor thrust on the base.
 * Positions and speeds of motor and table are relative to the base. Stored: ½ m v², by absolute speeds.
 * Source: Newton's law for each body, and for all of them together.
 */
export class Inertia implements Term {
  readonly #base: Base;
  #m1 = 1;
  #m1t = 1;
  #m2 = 1;
  /** m1t/m1, and m_b + m1t m1r/m1. */
  #travelling = 1;
  #mass = 1;

  constructor(base: Base) {
    this.#base = base;
  }

  configure(p: Parameters): void {
    this.#m1 = motorSideMass(p);
    this.#m1t = translatingMotorMass(p);
    this.#m2 = loadSideMass(p);
    this.#travelling = this.#m1t / this.#m1;
    this.#mass = p.baseMass + this.#travelling * (this.#m1 - this.#m1t);
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
    const vb = this.#base.speed(y);
    store.energy += 0.5 * this.#m1t * (y[V1] + vb) ** 2;
    store.energy += 0.5 * (this.#m1 - this.#m1t) * y[V1] ** 2;
    store.energy += 0.5 * this.#m2 * (y[V2] + vb) ** 2;
  }

  #accelerateBase(dy: State, f1: number, f2: number): number {
    const ab = (this.#base.takeFromOutside() - this.#travelling * f1 - f2) / this.#mass;
    this.#base.accelerate(dy, ab);
    return ab;
  }
}
