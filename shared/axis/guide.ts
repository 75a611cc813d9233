import { loadSideMass } from '../core/movedMass.ts';
import type { Parameters } from '../core/parameters/table.ts';
import { ironFactor } from './field.ts';
import { GRAVITY } from './gravity.ts';

/*
 * What presses on the guide, and the dry friction that it makes of it; every force in N:
 *
 *   F_att = N (B/B0)² attraction              pull of the magnets on the iron of all N motors
 *   N_g   = |m2 g cosθ + F_att|               load of the guide
 *   F_c   = μ_c N_g + F_c0                    sliding friction
 *   F_s   = μ_s N_g + F_s0                    breakaway
 *
 * Source: Coulomb friction with a share that does not depend on load, for seals and wipers (common practice).
 */

/** The rows of the parameter table that the guide's dry friction consists of: with all of them 0 there is none. */
export const GUIDE_FRICTION = [
  'frictionCoefficient',
  'stictionCoefficient',
  'sealFriction',
  'sealStiction',
] as const;

/** Sliding friction as a share of the breakaway force, at least. */
const LEAST_SLIDING = 1e-3;

/** Of all motors at their present gap, N. */
export function attractionForce(p: Parameters): number {
  return p.motorCount * ironFactor(p) * p.attraction;
}

export function guideLoad(p: Parameters): number {
  return Math.abs(loadSideMass(p) * GRAVITY * Math.cos(p.inclination) + attractionForce(p));
}

/**
 * Without any of it, bristles that hold up to the breakaway force would have to let go infinitely fast: a thousandth of that force is
 * left, which nobody measures.
 */
export function slidingFriction(p: Parameters): number {
  return Math.max(p.frictionCoefficient * guideLoad(p) + p.sealFriction, LEAST_SLIDING * breakawayForce(p));
}

export function breakawayForce(p: Parameters): number {
  return p.stictionCoefficient * guideLoad(p) + p.sealStiction;
}

/** False for an air bearing. */
export function hasDryFriction(p: Parameters): boolean {
  return slidingFriction(p) > 0 || breakawayForce(p) > 0;
}
