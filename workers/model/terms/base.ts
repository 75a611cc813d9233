import { valueAt } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { baseAt, E_OTHER, type State } from '../state.ts';
import type { Store, Term } from '../term.ts';

/*
 * The machine base on its mounts, if it is not fixed to the floor:
 *
 *   k_b = m_b (2π f_b)²,  c_b = 2 D_b m_b 2π f_b      on the base −k_b x_b − c_b v_b
 *
 * N, m, kg. x_b and v_b, states behind the currents, count from the floor; everything else counts from the base. Its own weight is
 * left out: the mounts carry it at rest.
 */
export class Base implements Term {
  /** False for a base that is fixed to the floor. */
  readonly moves: boolean;
  /** N/m */
  stiffness = 0;
  #mass = 1;
  #fromOutside = 0;
  #damping = 0;
  readonly #at: number = 0;

  /** @param motors how many motors' currents stand before the states of a base that moves; null for a fixed one */
  constructor(motors: number | null) {
    this.moves = motors !== null;
    this.#at = baseAt(motors ?? 0);
  }

  configure(p: Parameters): void {
    const omega = 2 * Math.PI * p.baseFrequency;
    this.#mass = p.baseMass;
    this.stiffness = p.baseMass * omega ** 2;
    this.#damping = 2 * p.baseDamping * p.baseMass * omega;
  }

  /** Of the derivatives that belong to it, x_b' here; v_b' needs all forces first, see inertia.ts. */
  evaluate(y: Readonly<State>, dy: State): void {
    const vb = this.speed(y);
    dy[this.#at] = vb;
    this.push(-this.stiffness * this.position(y));
    this.push(-this.#damping * vb);
    dy[E_OTHER] += this.#damping * vb * vb;
  }

  store(y: Readonly<State>, store: Store): void {
    const xb = this.position(y);
    const vb = this.speed(y);
    store.energy += 0.5 * this.#mass * vb * vb;
    store.energy += 0.5 * this.stiffness * xb * xb;
  }

  /** x_b, m. */
  position(y: Readonly<State>): number {
    return this.moves ? valueAt(y, this.#at) : 0;
  }

  /** v_b, m/s. */
  speed(y: Readonly<State>): number {
    return this.moves ? valueAt(y, this.#at + 1) : 0;
  }

  place(y: State, position: number): void {
    y[this.#at] = position;
  }

  /** Adds a force on any of the bodies that comes from outside the machine and so finds no reaction on the base, N. */
  push(force: number): void {
    this.#fromOutside += force;
  }

  /** Ends the sum of these forces, and hands it out. */
  takeFromOutside(): number {
    const force = this.#fromOutside;
    this.#fromOutside = 0;
    return force;
  }

  /** Writes v_b', m/s². */
  accelerate(dy: State, acceleration: number): void {
    dy[this.#at + 1] = acceleration;
  }
}
