import { motorConstants } from '../../../shared/axis/motor.ts';
import { valueAt } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { Known } from '../../../shared/protocol/fit.ts';
import type { Findings } from './findings.ts';
import { scatter } from './jackknife.ts';
import { MASS, type MotionFit } from './motionFit.ts';
import { MAGNET_TOLERANCE } from './motorForce.ts';

/** True force over the force that the parameters make of the current, and the relative half-width of that. */
export interface Scale {
  readonly value: number;
  readonly tolerance: number;
}

/** The force constant of the parameters is believed, but for the temperature of the magnets. */
export const BELIEVED: Scale = { value: 1, tolerance: MAGNET_TOLERANCE };

const massOf = (x: Float64Array) => valueAt(x, MASS);

/**
 * Takes mass and force constant apart: the motion tells M/K only.
 *
 * @param added the fit of the run with the known mass added, if there is one
 */
export function findScale(
  motion: MotionFit,
  known: Known,
  added: MotionFit | null,
  p: Parameters,
  findings: Findings,
): Scale {
  const fitted = massOf(motion.jackknife.x);
  const spread = scatter(motion.jackknife, massOf);
  const tolerance = known.tolerance ?? 0;
  const constant = motorConstants(p).forcePerAmpRms;
  switch (known.kind) {
    case 'force constant': {
      const scale = { value: 1, tolerance: Math.hypot(tolerance, MAGNET_TOLERANCE) };
      findings.take('mass', fitted, spread, scale.tolerance * fitted);
      findings.miss(
        ['forceConstant'],
        'It is taken as known: the motion tells mass over force constant only.',
      );
      return scale;
    }
    case 'mass': {
      const value = known.mass / fitted;
      const relative = spread / fitted;
      findings.miss(['mass'], 'It is taken as known: the motion tells mass over force constant only.');
      findings.take(
        'forceConstant',
        constant * value,
        constant * value * relative,
        constant * value * Math.hypot(tolerance, MAGNET_TOLERANCE),
      );
      return { value, tolerance: Math.hypot(relative, tolerance) };
    }
    case 'added mass': {
      const other = massOf(added!.jackknife.x);
      const otherSpread = scatter(added!.jackknife, massOf);
      const difference = other - fitted;
      const value = known.mass / difference;
      const relative = Math.hypot(spread, otherSpread) / difference;
      // M = known · fitted/(other − fitted), by the scatter of each.
      const mass = value * fitted;
      const massSpread = (value * Math.hypot(spread * other, otherSpread * fitted)) / difference;
      findings.take('mass', mass, massSpread, mass * tolerance);
      findings.take(
        'forceConstant',
        constant * value,
        constant * value * relative,
        constant * value * Math.hypot(tolerance, MAGNET_TOLERANCE),
      );
      return { value, tolerance: Math.hypot(relative, tolerance) };
    }
  }
}
