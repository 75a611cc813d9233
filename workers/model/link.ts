import type { Parameters } from '../../shared/core/parameters/table.ts';
import { screwStrain } from './growth.ts';

/** The screw is never shorter than this between fixed bearing and nut, m. */
const SHORTEST_SCREW = 1e-3;

/*
 * Between motor and table: coil mounting, or screw, nut and bearings in series, with lost motion b.
 *
 *   s    = x1 − x2 + γ (x2 + l0)                γ: thermal growth of the screw
 *   s_d  = s ∓ b/2 outside the lost motion, 0 inside
 *   1/k  = 1/k12 + (x2 + l0)/EA                 k' = dk/dx2 = −k²/EA
 *   F    = k s_d + c12 (v1 − v2)                never pulling while there is lost motion
 *   on the motor −F, on the table F (1 − γ) − ½ k' s_d²
 *
 * m, N, N/m. U = ½ k s_d² then gives back exactly what the two forces put in, less the damper's heat.
 */
export class Link {
  /** Results of the last call of `evaluate`: N, N, W. */
  onMotor = 0;
  onTable = 0;
  loss = 0;

  private compliance = 0;
  private damping = 0;
  private half = 0;
  private perRigidity = 0;
  private span = 0;
  private growth = 0;

  configure(p: Parameters): void {
    this.compliance = 1 / p.linkStiffness;
    this.damping = p.linkDamping;
    this.half = p.backlash / 2;
    this.perRigidity = p.screwRigidity > 0 ? 1 / p.screwRigidity : 0;
    this.span = p.screwSpan;
  }

  /** Growth at this temperature of the screw, °C. */
  warm(p: Parameters, screwTemperature: number): void {
    this.growth = screwStrain(p, screwTemperature);
  }

  evaluate(x1: number, v1: number, x2: number, v2: number): void {
    const s = this.stretch(x1, x2);
    if (s === 0 && this.half > 0) {
      this.onMotor = 0;
      this.onTable = 0;
      this.loss = 0;
      return;
    }
    const k = this.stiffness(x2);
    const spring = k * s;
    let force = spring + this.damping * (v1 - v2);
    if (this.half > 0 && force * s < 0) force = 0;
    const slope = x2 + this.span > SHORTEST_SCREW ? -k * k * this.perRigidity : 0;
    this.onMotor = -force;
    this.onTable = force * (1 - this.growth) - 0.5 * slope * s * s;
    this.loss = (force - spring) * (v1 - (1 - this.growth) * v2);
  }

  energy(x1: number, x2: number): number {
    return 0.5 * this.stiffness(x2) * this.stretch(x1, x2) ** 2;
  }

  private stretch(x1: number, x2: number): number {
    const s = x1 - x2 + this.growth * (x2 + this.span);
    if (s > this.half) return s - this.half;
    if (s < -this.half) return s + this.half;
    return 0;
  }

  private stiffness(x2: number): number {
    return 1 / (this.compliance + Math.max(x2 + this.span, SHORTEST_SCREW) * this.perRigidity);
  }
}
