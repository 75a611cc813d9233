import { ScrewGrowth } from '../../../shared/axis/growth.ts';
import { screwLength } from '../../../shared/axis/screw.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { E_OTHER, F1, F2, type State, type Temperatures, V1, V2, X1, X2 } from '../state.ts';
import type { Store, Term } from '../term.ts';

/** The screw is never shorter than this between a fixed bearing and the nut, m. */
const SHORTEST_SCREW = 1e-3;

/*
 * Between motor and table: coil mounting, or screw, nut and bearings in series, with lost motion b.
 *
 *   s    = x1 − x2 + γ (x2 + l0)                γ: thermal growth of the screw
 *   s_d  = s ∓ b/2 outside the lost motion, 0 inside
 *   1/k  = 1/k12 + l (1 − l/L)/EA, l = x2 + l0  k' = dk/dx2 = −k² (1 − 2l/L)/EA
 *                                               L: between two fixed bearings, both sides in parallel; 1/L = 0 with one
 *   F    = k s_d + c12 (v1 − v2)                never pulling while there is lost motion
 *   on the motor −F, on the table F (1 − γ) − ½ k' s_d²
 *
 * m, N, N/m. U = ½ k s_d² then gives back exactly what the two forces put in, less the damper's heat.
 */
export class Link implements Term {
  #compliance = 0;
  /** k where it is the same everywhere: no screw yields; else 0. N/m */
  #uniform = 0;
  #damping = 0;
  #half = 0;
  #perRigidity = 0;
  #span = 0;
  /** Longest length from the fixed bearing to the nut, m, and one over the distance of two fixed bearings; with one, none and 0. */
  #longest = Infinity;
  #perDistance = 0;
  #screw: ScrewGrowth | null = null;
  #growth = 0;

  configure(p: Parameters): void {
    this.#compliance = 1 / p.linkStiffness;
    this.#damping = p.linkDamping;
    this.#half = p.backlash / 2;
    this.#perRigidity = p.screwRigidity > 0 ? 1 / p.screwRigidity : 0;
    this.#uniform = p.screwRigidity > 0 ? 0 : 1 / this.#compliance;
    this.#span = p.screwSpan;
    const isFixedTwice = p.screwSupport === 'fixed';
    this.#longest = isFixedTwice ? screwLength(p) - SHORTEST_SCREW : Infinity;
    this.#perDistance = isFixedTwice ? 1 / screwLength(p) : 0;
    this.#screw = new ScrewGrowth(p);
  }

  /**
   * Takes temperatures, which move while it runs. Called after `configure`, too.
   * @returns true when that changed the energy stored
   */
  warm({ screw }: Temperatures): boolean {
    const before = this.#growth;
    this.#growth = this.#screw?.strain(screw) ?? 0;
    return this.#growth !== before;
  }

  evaluate(y: Readonly<State>, dy: State): void {
    const x2 = y[X2];
    const s = this.#stretch(y[X1], x2);
    if (s === 0 && this.#half > 0) return;
    const v1 = y[V1];
    const v2 = y[V2];
    const k = this.#stiffness(x2);
    const spring = k * s;
    let force = spring + this.#damping * (v1 - v2);
    if (this.#half > 0 && force * s < 0) force = 0;
    dy[F1] -= force;
    dy[F2] += force * (1 - this.#growth) - 0.5 * this.#slope(x2, k) * s * s;
    dy[E_OTHER] += (force - spring) * (v1 - (1 - this.#growth) * v2);
  }

  /** 1 or −1 while one side of the lost motion pushes, 2 or −2 while it springs back without pushing, 0 within; 0 always where there is none. */
  contact(y: Readonly<State>): number {
    if (this.#half === 0) return 0;
    const s = this.#stretch(y[X1], y[X2]);
    const force = this.#stiffness(y[X2]) * s + this.#damping * (y[V1] - y[V2]);
    return Math.sign(s) * (force * s < 0 ? 2 : 1);
  }

  store(y: Readonly<State>, store: Store): void {
    store.energy += 0.5 * this.#stiffness(y[X2]) * this.#stretch(y[X1], y[X2]) ** 2;
  }

  #stretch(x1: number, x2: number): number {
    const s = x1 - x2 + this.#growth * (x2 + this.#span);
    if (s > this.#half) return s - this.#half;
    if (s < -this.#half) return s + this.#half;
    return 0;
  }

  #stiffness(x2: number): number {
    if (this.#uniform > 0) return this.#uniform;
    const length = Math.min(Math.max(x2 + this.#span, SHORTEST_SCREW), this.#longest);
    return 1 / (this.#compliance + length * (1 - length * this.#perDistance) * this.#perRigidity);
  }

  /** k', N/m². */
  #slope(x2: number, k: number): number {
    if (this.#uniform > 0) return 0;
    const length = x2 + this.#span;
    const isBetween = length > SHORTEST_SCREW && length < this.#longest;
    return isBetween ? -k * k * this.#perRigidity * (1 - 2 * length * this.#perDistance) : 0;
  }
}
