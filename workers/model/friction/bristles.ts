import { breakawayForce, slidingFriction } from '../../../shared/axis/guide.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { FrictionLaw } from './law.ts';

/*
 * LuGre friction of a guide: bristles of deflection z (m) under a sliding speed v (m/s).
 *
 *   g(v) = F_c + (F_s − F_c) exp(−(v/v_s)²)
 *   λ    = σ0 |v|/g(v),   c = √(1 + (λ/λ_cap)²)
 *   z'   = (v − λ z)/c
 *   F    = σ0 (z + z' (c − 1)/λ) + σ1 exp(−(v/v_d)²) z' + σ2 v
 *
 * Source: Canudas de Wit, Olsson, Åström, Lischinsky, IEEE Trans. Automatic Control 40(3), 1995, 419–425 (λ_cap → ∞, v_d → ∞);
 * the fading of σ1 with speed keeps the damping passive: Olsson, Control Systems with Friction, thesis, Lund 1996 (from memory).
 *
 * The cap is ours. Sliding at 0.1 m/s, bristles relax a million times a second, which an explicit solver pays for in tiny steps and
 * nobody can see. Here they relax λ_cap times a second at most, and the term with (c − 1)/λ gives back what they lag too much, so that
 * the force follows g(v) with the published lag 1/λ to first order at any speed; at small λ, where a reversal happens, c is 1.
 */

/**
 * Largest relaxation rate of bristles of ordinary stiffness, 1/s: two per period of a 16 kHz current loop, which one solver step can
 * take. Measured against a stiff solver without a cap (tests/reference): the table's path moves by 0.33 nm at most, the current by
 * 0.003 % of its peak, for 12 evaluations a period instead of 1,300.
 */
const BRISTLE_RATE_CAP = 3e4;

/** Stiffness up to which that cap was measured, N/m. */
const ORDINARY_STIFFNESS = 3e7;

/**
 * Where the cap ends, 1/s: a slide at 1 m/s takes 34 evaluations a period; without this end, at 1e9 N/m, some 500. Over the legal range of
 * the stiffness, up to 1e9 N/m, the path of a stick-slip then stays within 2 nm of the published law (0.4 nm at 1e8, 1.4 nm at 1e9 N/m,
 * tests/workers/model/bristleRateCap.test.ts).
 */
const HIGHEST_RATE_CAP = 1e5;

/** Largest relaxation rate, 1/s, for a stiffness σ0 in N/m: stiffer bristles relax faster in the same slip, and the cap follows. */
export function bristleRateCap(stiffness: number): number {
  return Math.min(BRISTLE_RATE_CAP * Math.max(1, stiffness / ORDINARY_STIFFNESS), HIGHEST_RATE_CAP);
}

/** σ0, σ1, σ2, v_s, v_d and what they work on, as the equations have them. F_s is F_c at least. */
export interface BristleConstants {
  readonly coulomb: number;
  readonly breakaway: number;
  readonly stribeckSpeed: number;
  readonly bristleStiffness: number;
  readonly bristleDamping: number;
  readonly dampingFadeSpeed: number;
  readonly viscous: number;
}

export class BristleFriction implements FrictionLaw {
  force = 0;
  deflectionRate = 0;

  #coulomb = 1;
  #excess = 0;
  #perStribeck = 0;
  #sigma0 = 1;
  #sigma1 = 0;
  #perFade = 0;
  #sigma2 = 0;
  #perCap = 0;

  configure(p: Parameters): void {
    this.set({ ...p, coulomb: slidingFriction(p), breakaway: breakawayForce(p) });
  }

  set(constants: BristleConstants, rateCap = bristleRateCap(constants.bristleStiffness)): void {
    this.#coulomb = constants.coulomb;
    this.#excess = Math.max(constants.breakaway - constants.coulomb, 0);
    this.#perStribeck = 1 / constants.stribeckSpeed;
    this.#sigma0 = constants.bristleStiffness;
    this.#sigma1 = constants.bristleDamping;
    this.#perFade = 1 / constants.dampingFadeSpeed;
    this.#sigma2 = constants.viscous;
    this.#perCap = 1 / rateCap;
  }

  evaluate(v: number, z: number): void {
    const stribeck = v * this.#perStribeck;
    const g = this.#coulomb + this.#excess * bell(stribeck);
    const rate = (this.#sigma0 * Math.abs(v)) / g;
    const r = rate * this.#perCap;
    const c = Math.sqrt(1 + r * r);
    const zDot = (v - rate * z) / c;
    const lag = (r * this.#perCap) / (1 + c);
    const fade = v * this.#perFade;
    this.deflectionRate = zDot;
    this.force = this.#sigma0 * (z + lag * zDot) + this.#sigma1 * bell(fade) * zDot + this.#sigma2 * v;
  }
}

/** exp(−x²); 0 from where it is less than the rounding of a 1, which is most of a move. */
function bell(x: number): number {
  const square = x * x;
  return square > 40 ? 0 : Math.exp(-square);
}
