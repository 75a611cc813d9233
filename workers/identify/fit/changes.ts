import { dryMotorDrag, ironDrag, nutDrag } from '../../../shared/axis/drag.ts';
import { slopeForce } from '../../../shared/axis/gravity.ts';
import { guideLoad } from '../../../shared/axis/guide.ts';
import { motorSideMass } from '../../../shared/core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import type { FitResult } from '../../../shared/protocol/fit.ts';

/**
 * The estimates as rows of the parameter table. A trace shows sums only; what is not told apart
 * goes to the row a user can least look up: mass to the payload, sliding friction to the seals,
 * viscous friction to the guide, a constant load to the counterbalance.
 */
export function changesOf(estimates: FitResult['estimates'], p: Parameters): ParameterChanges {
  const { mass, forceConstant, coulomb, viscous, bias, linkStiffness, backlash, delay } = estimates;
  const changes: ParameterChanges = {};
  if (mass) changes.payload = Math.max(0, mass.value - motorSideMass(p) - p.tableMass);
  if (forceConstant && p.lead > 0) changes.torqueConstant = (forceConstant.value * p.lead) / (2 * Math.PI);
  else if (forceConstant) changes.forceConstant = forceConstant.value;
  const carried = { ...p, ...changes };
  if (coulomb) {
    const fromLoad = carried.frictionCoefficient * guideLoad(carried);
    const seals = Math.max(0, coulomb.value - dryMotorDrag(p) - fromLoad);
    changes.sealFriction = seals;
    // Breakaway stays as far above sliding as it is.
    changes.sealStiction = Math.max(0, p.sealStiction + seals - p.sealFriction);
  }
  if (viscous) {
    changes.viscous = Math.max(0, viscous.value - nutDrag(p).viscous - ironDrag(p).viscous);
  }
  if (bias) changes.counterbalance = slopeForce(carried) - bias.value;
  if (linkStiffness) changes.linkStiffness = linkStiffness.value;
  if (backlash) changes.backlash = Math.max(0, backlash.value);
  const lag = delay ? delay.value - heldDelay(p) : 0;
  if (lag > 0) changes.currentBandwidth = 1 / (2 * Math.PI * lag);
  return changes;
}

/**
 * A command that the position loop holds for several periods of the current loop is on average as
 * late as half of the others, s.
 */
function heldDelay(p: Parameters): number {
  return (p.positionDivider - 1) / 2 / p.currentRate;
}
