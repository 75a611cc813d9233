import type { Shape } from './shape.ts';

/** Largest step of a corner, as a factor, and the power of it for the speed filter. */
const STEP = 1.4;
const FILTER_STEPS = 2;

/**
 * Shapes around a shape: each corner and the speed filter, up and down. `size` is 1 for the largest
 * steps.
 */
export function neighboursOf(shape: Shape, size: number): Shape[] {
  return [STEP ** size, STEP ** -size].flatMap((factor) => [
    withCorners(shape, factor, 1),
    withCorners(shape, 1, factor),
    { ...shape, derivativeTime: shape.derivativeTime * factor ** FILTER_STEPS },
  ]);
}

/** Number of neighbours. */
export const NEIGHBOURS = 6;

/** The shape at another limit, changed as trials changed that at this one: corners and speed filter by the same factors. */
export function changedAlike(other: Shape, before: Shape, after: Shape): Shape {
  // The corner of an integrator is 0 where an observer integrates.
  const factor = (of: 'integratorCorner' | 'leadCorner' | 'derivativeTime') =>
    before[of] > 0 ? after[of] / before[of] : 1;
  return {
    ...withCorners(other, factor('integratorCorner'), factor('leadCorner')),
    derivativeTime: other.derivativeTime * factor('derivativeTime'),
  };
}

function withCorners(shape: Shape, integrator: number, lead: number): Shape {
  const leadCorner = shape.leadCorner * lead;
  return {
    ...shape,
    leadCorner,
    integratorCorner: Math.min(shape.integratorCorner * integrator, leadCorner),
  };
}

/**
 * Deviations of the acceleration feedforward from the force balance that are tried, as shares. The
 * remainder of the delay at the last jerk of a move and the integrator's response to the
 * deceleration can cancel where the table comes to rest; whether they do, only simulated runs tell.
 */
export const TRIMS = [-0.06, -0.04, -0.02, 0.02, 0.04, 0.06] as const;
