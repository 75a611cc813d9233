import { motorConstants } from '../../shared/axis/motor.ts';
import { magnetFactor, resistanceFactor } from '../../shared/axis/temperature.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Losses } from '../model/heat.ts';
import type { Temperatures } from '../model/state.ts';

/** Part of a cycle with its mean losses. */
export interface CyclePart {
  /** s */
  readonly duration: number;
  /** Mean of 1.5 Σ(i_d² + i_q²) that the same force takes with magnets at 20 °C, A². */
  readonly squares: number;
  /** W */
  readonly iron: number;
  readonly guide: number;
  readonly nut: number;
  /** h */
  readonly draught: number;
}

/**
 * One whole cycle (or several short ones in a row) of the axis in its periodic state, run in full
 * at constant temperatures.
 */
export interface Cycle {
  readonly at: Temperatures;
  readonly folded: boolean;
  /** s */
  readonly duration: number;
  readonly parts: readonly CyclePart[];
  /** Mean electrical power that does not go into copper, W. */
  readonly usefulPower: number;
  /** N per A of amplitude with magnets at 20 °C, weighted with the current. */
  readonly forcePerAmp: number;
  /** n: with magnets weaker by a factor m, force per ampere falls as m^n. 1 without saturation. */
  readonly fluxExponent: number;
  /** N, and A of amplitude with magnets at 20 °C. */
  readonly rmsForce: number;
  readonly rmsCurrent: number;
  /** Largest current command as a share of the limit. */
  readonly currentUse: number;
  /** The overload allowance was used up within the cycle. */
  readonly overloaded: boolean;
  /** Range of the setpoint, m. */
  readonly from: number;
  readonly to: number;
}

/** Force per ampere with the carrier at this temperature, over that with magnets at 20 °C. */
export function forceFactor(
  p: Parameters,
  { fluxExponent }: Pick<Cycle, 'fluxExponent'>,
  carrier: number,
): number {
  return magnetFactor(p, carrier) ** fluxExponent;
}

/**
 * Losses of a part, W, at other temperatures of winding and carrier: the same force takes more
 * current where the magnets are weaker.
 */
export function lossesAt(
  p: Parameters,
  cycle: Cycle,
  part: CyclePart,
  winding: number,
  carrier: number,
): Losses {
  const resistance = motorConstants(p).resistance * resistanceFactor(winding);
  const copper = (resistance * part.squares) / forceFactor(p, cycle, carrier) ** 2;
  return { copper, iron: part.iron, guide: part.guide, nut: part.nut };
}
