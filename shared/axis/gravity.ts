import { loadSideMass, translatingMotorMass } from '../core/movedMass.ts';
import type { Parameters } from '../core/parameters/table.ts';

/** Standard acceleration of free fall, m/s² (ISO 80000-3). */
export const GRAVITY = 9.80665;

/** Pull of gravity down the inclined axis, N. A turning screw has inertia but no weight along the axis. */
export function slopeForce(p: Parameters): number {
  return (translatingMotorMass(p) + loadSideMass(p)) * GRAVITY * Math.sin(p.inclination);
}

/** Force along +x that holds the axis against gravity, with the help of its counterbalance, N. */
export function holdingForce(p: Parameters): number {
  return slopeForce(p) - p.counterbalance;
}

/** A brake holds this many times the load. Common practice, no source. */
export const BRAKE_MARGIN = 2;

/** Force that a brake has to hold against gravity, N: 0 on a level or balanced axis. */
export function brakeForce(p: Parameters): number {
  return BRAKE_MARGIN * Math.abs(holdingForce(p));
}
