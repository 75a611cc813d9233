import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { E_OUT, F2, type State, V2, X2 } from '../state.ts';
import type { Term } from '../term.ts';
import type { Base } from './base.ts';

/*
 * A hand that pulls the table by a spring, while it holds on:
 *
 *   F_hand = k_h (x_hand − x2 − x_b) − c_h (v2 + v_b)
 *
 * N, m. The hand is outside the machine: it finds no reaction on the base, and its work counts as given to the outside.
 */
export class Hand implements Term {
  /** True while it holds on. */
  acts = false;
  readonly #base: Base;
  #stiffness = 0;
  #damping = 0;
  #position = 0;

  constructor(base: Base) {
    this.#base = base;
  }

  configure(p: Parameters): void {
    this.#stiffness = p.handStiffness;
    this.#damping = p.handDamping;
  }

  /** Takes hold at a position, m from the floor, or lets go with null. */
  hold(position: number | null): void {
    this.acts = position !== null;
    this.#position = position ?? this.#position;
  }

  evaluate(y: Readonly<State>, dy: State): void {
    const force = this.force(y);
    dy[F2] += force;
    this.#base.push(force);
    dy[E_OUT] -= force * (y[V2] + this.#base.speed(y));
  }

  /** On the table along +x, N. */
  force(y: Readonly<State>): number {
    if (!this.acts) return 0;
    const x = y[X2] + this.#base.position(y);
    const v = y[V2] + this.#base.speed(y);
    return this.#stiffness * (this.#position - x) - this.#damping * v;
  }
}
