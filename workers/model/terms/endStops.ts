import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { E_OTHER, F2, type State, V2, X2 } from '../state.ts';
import type { Store, Term } from '../term.ts';

/** Rubber buffers behind the travel limits: where they begin beyond the limit (m), stiffness (N/m), damping (N·s/m). */
const BUFFER_GAP = 3e-3;
const BUFFER_STIFFNESS = 1e6;
const BUFFER_DAMPING = 2e3;

/* The two buffers: penetration s (m) gives k s + c s' (N), never pulling; stored ½ k s², the rest is heat. */
export class EndStops implements Term {
  #low = 0;
  #high = 0;

  configure(p: Parameters): void {
    this.#low = p.travelMin - BUFFER_GAP;
    this.#high = p.travelMax + BUFFER_GAP;
  }

  evaluate(y: Readonly<State>, dy: State): void {
    const x2 = y[X2];
    if (x2 >= this.#low && x2 <= this.#high) return;
    const v2 = y[V2];
    const s = x2 > this.#high ? x2 - this.#high : x2 - this.#low;
    const spring = -BUFFER_STIFFNESS * s;
    const pushing = spring - BUFFER_DAMPING * v2;
    const force = pushing * s < 0 ? pushing : 0;
    dy[F2] += force;
    dy[E_OTHER] += (spring - force) * v2;
  }

  store(y: Readonly<State>, store: Store): void {
    const s = Math.max(y[X2] - this.#high, this.#low - y[X2], 0);
    store.energy += 0.5 * BUFFER_STIFFNESS * s * s;
  }
}
