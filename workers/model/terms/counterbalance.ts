import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { F2, type State, X2 } from '../state.ts';
import type { Store, Term } from '../term.ts';

/*
 * A counterbalance between base and table: F_cb, the same everywhere; stored −F_cb x2. N, m.
 * Source: a weight on a rope or a pneumatic cylinder with a large reservoir, taken as ideal.
 */
export class Counterbalance implements Term {
  acts = false;
  #force = 0;

  configure(p: Parameters): void {
    this.#force = p.counterbalance;
    this.acts = this.#force !== 0;
  }

  evaluate(_y: Readonly<State>, dy: State): void {
    dy[F2] += this.#force;
  }

  store(y: Readonly<State>, store: Store): void {
    store.energy -= this.#force * y[X2];
  }
}
