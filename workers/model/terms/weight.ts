import { GRAVITY } from '../../../shared/axis/gravity.ts';
import { loadSideMass, translatingMotorMass } from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { F1, F2, type State, X1, X2 } from '../state.ts';
import type { Store, Term } from '../term.ts';
import type { Base } from './base.ts';

/*
 * Weight along an inclined axis, N down the slope: m1t g sinθ on what travels with the motor, m2 g sinθ on the table. A turning screw
 * has inertia but no weight along the axis. Stored: weight times height, with the base's motion in it.
 */
export class Weight implements Term {
  acts = false;
  readonly #base: Base;
  #motor = 0;
  #table = 0;

  constructor(base: Base) {
    this.#base = base;
  }

  configure(p: Parameters): void {
    const slope = GRAVITY * Math.sin(p.inclination);
    this.#motor = translatingMotorMass(p) * slope;
    this.#table = loadSideMass(p) * slope;
    this.acts = slope !== 0;
  }

  /** Of everything that moves over the base, N. */
  get total(): number {
    return this.#motor + this.#table;
  }

  evaluate(_y: Readonly<State>, dy: State): void {
    dy[F1] -= this.#motor;
    dy[F2] -= this.#table;
    this.#base.push(-this.#motor);
    this.#base.push(-this.#table);
  }

  store(y: Readonly<State>, store: Store): void {
    const xb = this.#base.position(y);
    store.energy += this.#motor * (y[X1] + xb);
    store.energy += this.#table * (y[X2] + xb);
  }
}
