import { screwStrain } from '../../shared/axis/screw.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { armGrowth, scaleStrain } from '../model/growth.ts';
import type { Temperatures } from '../model/state.ts';

/*
 * Position of the tool when everything has expanded and the loop brings the encoder to x_set, m:
 *
 *   u (1 − α_s (T_t − T_a)) = x_set              encoder reading of its side
 *   x2 = u                                       scale on the table
 *   x2 (1 − γ) = u + γ l0                        encoder on the motor: the screw grows from its fixed bearing
 *   growth = x2 + l_t α_t (T_t − T_a) − x_set
 */

/** Thermal displacement of the tool from a setpoint, m. */
export function growthAt(p: Parameters, t: Temperatures, setpoint: number): number {
  const seen = setpoint / (1 - scaleStrain(p, t.table));
  const strain = p.encoderSide === 'motor' ? screwStrain(p, t.screw) : 0;
  return (seen + strain * p.screwSpan) / (1 - strain) + armGrowth(p, t.table) - setpoint;
}

/** The growth at the one of two setpoints where it is larger. */
export function largestGrowth(p: Parameters, t: Temperatures, from: number, to: number): number {
  const [one, other] = [growthAt(p, t, from), growthAt(p, t, to)];
  return Math.abs(one) > Math.abs(other) ? one : other;
}
