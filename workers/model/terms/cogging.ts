import { coggingTerms } from '../../../shared/axis/periodic.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { F1, type State, X1 } from '../state.ts';
import type { Store, Term } from '../term.ts';
import { Waves } from '../waves.ts';

/*
 * Cogging: the iron of the coil unit looks for the place of least reluctance. Conservative, so it does no work over a period.
 *
 *   F_cog(x1) = N (B/B0)² Σ A_k sin(2πx1/λ_k + φ_k)      on the motor −F_cog
 *   U(x1)     = −N (B/B0)² Σ A_k λ_k/2π cos(2πx1/λ_k + φ_k)
 *
 * A in N, λ and x in m. Slot and pole interaction gives a fraction of the pole pitch, the ends of the iron give τ and 2τ.
 */
export class Cogging implements Term {
  acts = false;
  #waves = new Waves();

  configure(p: Parameters): void {
    this.#waves = new Waves(
      coggingTerms(p).map(({ amplitude, period, phase }) => ({
        amplitude,
        rate: (2 * Math.PI) / period,
        phase,
      })),
    );
    this.acts = !this.#waves.isEmpty;
  }

  /** A period begins in the state y. */
  begin(y: Readonly<State>): void {
    this.#waves.follow(y[X1]);
  }

  evaluate(y: Readonly<State>, dy: State): void {
    dy[F1] -= this.force(y[X1]);
  }

  /** Force that resists motion towards +x, N. */
  force(x1: number): number {
    return this.#waves.at(x1);
  }

  store(y: Readonly<State>, store: Store): void {
    store.energy += this.#waves.integral(y[X1]);
  }
}
