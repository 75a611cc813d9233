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
    const s = this.#penetration(y[X2]);
    if (s === 0) return;
    const v2 = y[V2];
    const spring = -BUFFER_STIFFNESS * s;
    const force = pushing(s, v2);
    dy[F2] += force;
    dy[E_OTHER] += (spring - force) * v2;
  }

  /** 1 while the upper buffer pushes, −1 the lower; 2 or −2 while it springs back without pushing; 0 between them. */
  contact(y: Readonly<State>): number {
    const s = this.#penetration(y[X2]);
    if (s === 0) return 0;
    return Math.sign(s) * (pushing(s, y[V2]) === 0 ? 2 : 1);
  }

  store(y: Readonly<State>, store: Store): void {
    const s = this.#penetration(y[X2]);
    if (s !== 0) store.energy += 0.5 * BUFFER_STIFFNESS * s * s;
  }

  /** m, negative at the bottom. */
  #penetration(x2: number): number {
    return x2 > this.#high ? x2 - this.#high : x2 < this.#low ? x2 - this.#low : 0;
  }
}

/** Force of a buffer, N, which pushes only. */
function pushing(s: number, v2: number): number {
  const force = -BUFFER_STIFFNESS * s - BUFFER_DAMPING * v2;
  return force * s < 0 ? force : 0;
}
