import { motorConstants } from '../../../shared/axis/motor.ts';
import { valueAt } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { Known } from '../../../shared/protocol/fit.ts';
import type { Findings } from './findings.ts';
import { scatter } from './jackknife.ts';
import { MASS } from './motionEquation.ts';
import type { MotionFit } from './motionFit.ts';
import { MAGNET_TOLERANCE } from './motorForce.ts';

/**
 * True force over the force that the parameters give for the current, and the relative half-width
 * of this ratio.
 */
export interface Scale {
  readonly value: number;
  readonly tolerance: number;
}

/** The force constant of the parameters is trusted, except for the temperature of the magnets. */
export const BELIEVED: Scale = { value: 1, tolerance: MAGNET_TOLERANCE };

/** What is known beforehand; for an added mass, with the fit of the run that carried it. */
type KnownBeforehand =
  | Exclude<Known, { readonly kind: 'added mass' }>
  | {
      readonly kind: 'added mass';
      readonly mass: number;
      readonly tolerance?: number | undefined;
      readonly fit: MotionFit;
    };

/** Separates mass and force constant: the motion determines only their ratio M/K. */
export function findScale(
  motion: MotionFit,
  known: KnownBeforehand,
  p: Parameters,
  findings: Findings,
): Scale {
  const fitted = massOf(motion.jackknife.x);
  const spread = scatter(motion.jackknife, massOf);
  const tolerance = known.tolerance ?? 0;
  switch (known.kind) {
    case 'force constant': {
      const scale = { value: 1, tolerance: Math.hypot(tolerance, MAGNET_TOLERANCE) };
      findings.take('mass', fitted, spread, scale.tolerance * fitted);
      findings.miss(['forceConstant'], TAKEN_AS_KNOWN);
      return scale;
    }
    case 'mass': {
      const value = known.mass / fitted;
      const relative = spread / fitted;
      findings.miss(['mass'], TAKEN_AS_KNOWN);
      takeConstant(value, relative, tolerance, p, findings);
      return { value, tolerance: Math.hypot(relative, tolerance) };
    }
    case 'added mass': {
      const other = massOf(known.fit.jackknife.x);
      const otherSpread = scatter(known.fit.jackknife, massOf);
      const difference = other - fitted;
      const value = known.mass / difference;
      const relative = Math.hypot(spread, otherSpread) / difference;
      // M = known · fitted/(other − fitted), with the scatter of each.
      const mass = value * fitted;
      const massSpread = (value * Math.hypot(spread * other, otherSpread * fitted)) / difference;
      findings.take('mass', mass, massSpread, mass * tolerance);
      takeConstant(value, relative, tolerance, p, findings);
      return { value, tolerance: Math.hypot(relative, tolerance) };
    }
  }
}

const TAKEN_AS_KNOWN = 'Taken as known: motion alone gives only the ratio of mass to force constant.';

function massOf(x: Float64Array): number {
  return valueAt(x, MASS);
}

/** Records the force constant of the parameters times `value`. */
function takeConstant(
  value: number,
  relative: number,
  tolerance: number,
  p: Parameters,
  findings: Findings,
): void {
  const constant = motorConstants(p).forcePerAmpRms * value;
  findings.take(
    'forceConstant',
    constant,
    constant * relative,
    constant * Math.hypot(tolerance, MAGNET_TOLERANCE),
  );
}
