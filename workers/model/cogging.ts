import { coggingTerms } from '../../shared/axis/periodic.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';

/*
 * Cogging: the iron of the coil unit looks for the place of least reluctance. Conservative, so it does no work over a period.
 *
 *   F_cog(x) = N (B/B0)² Σ A_k sin(2πx/λ_k + φ_k)          U(x) = −N (B/B0)² Σ A_k λ_k/2π cos(2πx/λ_k + φ_k)
 *
 * A in N, λ and x in m. Slot and pole interaction gives a fraction of the pole pitch, the ends of the iron give τ and 2τ.
 */
export class Cogging {
  #waves: readonly { readonly a: number; readonly w: number; readonly phi: number }[] = [];

  configure(p: Parameters): void {
    this.#waves = coggingTerms(p).map(({ amplitude, period, phase }) => ({
      a: amplitude,
      w: (2 * Math.PI) / period,
      phi: phase,
    }));
  }

  /** Force that resists motion towards +x, N. */
  force(x: number): number {
    let force = 0;
    for (const { a, w, phi } of this.#waves) force += a * Math.sin(w * x + phi);
    return force;
  }

  /** Energy stored in the field of the detents, J. */
  energy(x: number): number {
    let energy = 0;
    for (const { a, w, phi } of this.#waves) energy -= (a / w) * Math.cos(w * x + phi);
    return energy;
  }
}
