import { ironFactor } from '../../shared/axis/field.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';

/*
 * Cogging: the iron of the coil unit looks for the place of least reluctance. Conservative, so it does no work over a period.
 *
 *   F_cog(x) = N (B/B0)² Σ A_k sin(2πx/λ_k + φ_k)          U(x) = −N (B/B0)² Σ A_k λ_k/2π cos(2πx/λ_k + φ_k)
 *
 * A in N, λ and x in m. Slot and pole interaction gives a fraction of the pole pitch, the ends of the iron give τ and 2τ.
 */
export class Cogging {
  private a1 = 0;
  private a2 = 0;
  private a3 = 0;
  private w1 = 0;
  private w2 = 0;
  private w3 = 0;
  private phi1 = 0;
  private phi2 = 0;
  private phi3 = 0;

  configure(p: Parameters, polePitch: number): void {
    const scale = p.motorCount * ironFactor(p, polePitch);
    this.a1 = scale * p.cogging1;
    this.a2 = scale * p.cogging2;
    this.a3 = scale * p.cogging3;
    this.w1 = (2 * Math.PI) / p.cogging1Period;
    this.w2 = (2 * Math.PI) / p.cogging2Period;
    this.w3 = (2 * Math.PI) / p.cogging3Period;
    this.phi1 = p.cogging1Phase;
    this.phi2 = p.cogging2Phase;
    this.phi3 = p.cogging3Phase;
  }

  /** Force that resists motion towards +x, N. */
  force(x: number): number {
    let force = 0;
    if (this.a1 !== 0) force += this.a1 * Math.sin(this.w1 * x + this.phi1);
    if (this.a2 !== 0) force += this.a2 * Math.sin(this.w2 * x + this.phi2);
    if (this.a3 !== 0) force += this.a3 * Math.sin(this.w3 * x + this.phi3);
    return force;
  }

  /** Energy stored in the field of the detents, J. */
  energy(x: number): number {
    return (
      -(this.a1 / this.w1) * Math.cos(this.w1 * x + this.phi1) -
      (this.a2 / this.w2) * Math.cos(this.w2 * x + this.phi2) -
      (this.a3 / this.w3) * Math.cos(this.w3 * x + this.phi3)
    );
  }
}
