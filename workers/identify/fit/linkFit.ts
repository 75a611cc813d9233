import { dryMotorDrag } from '../../../shared/axis/drag.ts';
import { shaftCompliance } from '../../../shared/axis/screw.ts';
import { at, valueAt } from '../../../shared/core/at.ts';
import { motorSideMass, translatingMotorMass } from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { rms } from '../../math/statistics.ts';
import { type Jackknife, jackknife } from './jackknife.ts';
import type { MotionFit } from './motionFit.ts';
import { rippleColumns } from './nuisance.ts';

/**
 * A link with lost motion is clearly pulled one way where its force exceeds this share of its
 * largest.
 */
const CLEARLY_PULLED = 0.1;
const FEWEST_WINDOWS = 48;

interface LinkFit {
  readonly jackknife: Jackknife;
  stiffness(x: Float64Array): number;
  backlash(x: Float64Array): number;
  /**
   * Half-width due to dry drag on the motor side: where the link is always pulled in the direction
   * of motion, drag has the same effect as lost motion, m.
   */
  readonly backlashTolerance: number;
}

/** Index of each coefficient. */
const COMPLIANCE = 0;
const LOST = 1;
const DRY = 2;

/*
 * The link from both its ends, over the windows in which the table slides. Its force is that of the
 * motor less what moves the motor side, whose mass is known, and its stretch follows it:
 *
 *   F_12 = F − m1 a1 − F_1 sgn v           x1 − x2 − F_12 (x2 + l0)/EA = F_12/k12 ± b/2 + s0 + ε x2 + …
 *
 * F_1 is the dry drag of the parameters and ε the mismatch of the two scales. The error of the
 * drag, viscous and ripple force of the motor side, damping of the link and skew of the records are
 * fitted as well. The sign of b/2 is that of F_12; where the parameters have lost motion, windows
 * in which it changes are left out.
 */
export function fitLink(
  force: Float64Array,
  motor: Float64Array,
  table: Float64Array,
  { sliding: { windows, direction }, baseAcceleration }: MotionFit,
  p: Parameters,
): LinkFit | string {
  const acceleration = windows.average(motor, 2);
  const average = windows.average(force);
  const linkForce = average.map(
    (f, k) =>
      f -
      motorSideMass(p) * valueAt(acceleration, k) -
      translatingMotorMass(p) * valueAt(baseAcceleration, k) -
      dryMotorDrag(p) * at(direction, k),
  );
  const place = windows.average(table);
  const difference = motor.map((x1, k) => x1 - valueAt(table, k));
  const stretch = windows
    .average(difference)
    .map((s, k) => s - valueAt(linkForce, k) * shaftCompliance(p, valueAt(place, k)));
  const pull = p.backlash > 0 ? pulls(linkForce, direction) : direction;
  const used = direction.map((d, k) =>
    d !== 0 && pull[k] !== 0 && !Number.isNaN(valueAt(stretch, k)) ? 1 : 0,
  );
  const count = used.reduce((sum, one) => sum + one, 0);
  if (count < FEWEST_WINDOWS) return 'The table moves too little for its lag behind the motor to show.';

  const columns = [
    linkForce,
    p.backlash > 0 ? Float64Array.from(pull) : new Float64Array(windows.count),
    Float64Array.from(direction),
    new Float64Array(windows.count).fill(1),
    place,
    windows.average(table, 1),
    windows.average(difference, 1),
    windows.average(force, 1),
    ...rippleColumns(windows, motor, force, p),
  ].map((column) => column.filter((_, k) => used[k] === 1));
  const right = stretch.filter((_, k) => used[k] === 1);
  if (rms(right) === 0)
    return 'Motor and table position are the same record, so the link between them does not show.';
  const fit = jackknife(columns, right, windows.overlap);
  return {
    jackknife: fit,
    stiffness: (x) => 1 / valueAt(x, COMPLIANCE),
    backlash: (x) => 2 * valueAt(x, LOST),
    backlashTolerance: fit.dependent[DRY] ? 2 * dryMotorDrag(p) * valueAt(fit.x, COMPLIANCE) : 0,
  };
}

/**
 * 1 or −1 where the link is clearly pulled one way throughout a window and its neighbours, else 0.
 */
function pulls(linkForce: Float64Array, direction: Int8Array): Int8Array {
  const min =
    CLEARLY_PULLED *
    linkForce.reduce((max, f, k) => (direction[k] !== 0 ? Math.max(max, Math.abs(f)) : max), 0);
  return direction.map((_, k) => {
    const near = linkForce.subarray(Math.max(0, k - 2), k + 3);
    return near.every((f) => f > min) ? 1 : near.every((f) => f < -min) ? -1 : 0;
  });
}
