import type { Parameters } from '../core/parameters/table.ts';

/*
 * What heat does to lengths, K above the room:
 *
 *   arm     l_t α_t (T_t − T_a)             growth between scale head and tool, m
 *   scale   α_s (T_t − T_a)                 strain of the scale, which stays at the temperature of the table
 *   screw   γ = α_k (T_s − T_a)             strain of the screw, from its fixed bearing on
 *           γ = α_k (T_s − T_a − ϑ_p) ≥ 0   with both ends fixed: it keeps its length until its stretch is used up
 *
 * Position of the tool when everything has expanded and the loop brings the encoder to x_set, m:
 *
 *   u (1 − α_s (T_t − T_a)) = x_set         encoder reading of its side
 *   x2 = u                                  scale on the table
 *   x2 (1 − γ) = u + γ l0                   encoder on the motor
 *   growth = x2 + l_t α_t (T_t − T_a) − x_set
 */

/** Temperatures of table and screw, °C. */
interface Warmth {
  readonly table: number;
  readonly screw: number;
}

/** Arm and scale, for whoever asks at every sample. */
export class TableGrowth {
  readonly #arm: number = 0;
  readonly #scale: number = 0;
  readonly #ambient: number = 0;

  constructor(p: Parameters) {
    this.#arm = p.toolArm * p.tableExpansion;
    this.#scale = p.scaleExpansion;
    this.#ambient = p.ambient;
  }

  /** m */
  arm(table: number): number {
    return this.#arm * (table - this.#ambient);
  }

  scaleStrain(table: number): number {
    return this.#scale * (table - this.#ambient);
  }
}

/** γ, for whoever asks at every sample. */
export class ScrewGrowth {
  readonly #expansion: number = 0;
  readonly #ambient: number = 0;
  /** K; without a stretch the screw shortens, too. */
  readonly #stretch: number = 0;
  readonly #least: number = 0;

  constructor(p: Parameters) {
    const isFixed = p.screwSupport === 'fixed';
    this.#expansion = p.screwExpansion;
    this.#ambient = p.ambient;
    this.#stretch = isFixed ? p.screwPretension : 0;
    this.#least = isFixed ? 0 : Number.NEGATIVE_INFINITY;
  }

  strain(screw: number): number {
    return this.#expansion * Math.max(this.#least, screw - this.#ambient - this.#stretch);
  }
}

export function armGrowth(p: Parameters, table: number): number {
  return new TableGrowth(p).arm(table);
}

export function scaleStrain(p: Parameters, table: number): number {
  return new TableGrowth(p).scaleStrain(table);
}

export function screwStrain(p: Parameters, screw: number): number {
  return new ScrewGrowth(p).strain(screw);
}

/** Thermal displacement of the tool from a setpoint, m. */
export function growthAt(p: Parameters, t: Warmth, setpoint: number): number {
  const seen = setpoint / (1 - scaleStrain(p, t.table));
  const strain = p.encoderSide === 'motor' ? screwStrain(p, t.screw) : 0;
  return (seen + strain * p.screwSpan) / (1 - strain) + armGrowth(p, t.table) - setpoint;
}

/** The growth at the one of two setpoints where it is larger. */
export function largestGrowth(p: Parameters, t: Warmth, from: number, to: number): number {
  const [one, other] = [growthAt(p, t, from), growthAt(p, t, to)];
  return Math.abs(one) > Math.abs(other) ? one : other;
}
