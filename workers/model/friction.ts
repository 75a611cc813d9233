/*
 * LuGre friction of a guide: bristles of deflection z (m) under a sliding speed v (m/s).
 *
 *   g(v) = F_c + (F_s − F_c) exp(−(v/v_s)²)
 *   λ    = σ0 |v|/g(v)
 *   z'   = (v − λ z)/(1 + λ/λ_cap)
 *   F    = σ0 z + σ1 exp(−(v/v_d)²) z' + σ2 v
 *
 * Source: Canudas de Wit, Olsson, Åström, Lischinsky, IEEE Trans. Automatic Control 40(3), 1995, 419–425 (λ_cap → ∞, v_d → ∞);
 * the fading of σ1 with speed keeps the damping passive: Olsson, Control Systems with Friction, thesis, Lund 1996 (from memory).
 */

/**
 * Largest relaxation rate of the bristles, 1/s. Sliding at 0.1 m/s a table's bristles would relax a million times a second, which
 * an explicit solver pays for in tiny steps and nobody can see: where the cap acts, z follows g(v)/σ0 within 10 µs.
 */
export const BRISTLE_RATE_CAP = 1e5;

export interface FrictionLaw {
  /** Coulomb and breakaway force, N; breakaway 0 means no bristles at all (air bearing). */
  readonly coulomb: number;
  readonly breakaway: number;
  readonly stribeckSpeed: number;
  readonly bristleStiffness: number;
  readonly bristleDamping: number;
  readonly dampingFadeSpeed: number;
  readonly viscous: number;
}

export class Friction {
  private coulomb = 0;
  private excess = 0;
  private perStribeck = 0;
  private sigma0 = 1;
  private sigma1 = 0;
  private perFade = 0;
  private sigma2 = 0;
  private perCap = 0;
  private bristles = false;

  configure(law: FrictionLaw, rateCap = BRISTLE_RATE_CAP): void {
    this.coulomb = law.coulomb;
    this.excess = Math.max(law.breakaway - law.coulomb, 0);
    this.bristles = this.coulomb + this.excess > 0;
    this.perStribeck = 1 / law.stribeckSpeed;
    this.sigma0 = law.bristleStiffness;
    this.sigma1 = law.bristleDamping;
    this.perFade = 1 / law.dampingFadeSpeed;
    this.sigma2 = law.viscous;
    this.perCap = 1 / rateCap;
  }

  /** z', m/s. */
  bristleSpeed(v: number, z: number): number {
    if (!this.bristles) return 0;
    const r = v * this.perStribeck;
    const g = this.coulomb + this.excess * Math.exp(-r * r);
    const rate = (this.sigma0 * Math.abs(v)) / g;
    return (v - rate * z) / (1 + rate * this.perCap);
  }

  /** Force that resists v, N. `zDot` is bristleSpeed(v, z). */
  force(v: number, z: number, zDot: number): number {
    if (!this.bristles) return this.sigma2 * v;
    const r = v * this.perFade;
    return this.sigma0 * z + this.sigma1 * Math.exp(-r * r) * zDot + this.sigma2 * v;
  }
}
