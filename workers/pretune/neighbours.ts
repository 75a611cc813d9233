import type { Shape } from './shape.ts';

/** Longest step, as a factor on a corner, and how much longer that of the speed filter is. */
const STEP = 1.4;
const FILTER_STEPS = 2;

/**
 * Shapes round a shape: each corner and the speed filter, up and down. `size` is 1 for the longest
 * steps.
 */
export function neighboursOf(shape: Shape, size: number): Shape[] {
  return [STEP ** size, STEP ** -size].flatMap((factor) => [
    withCorners(shape, factor, 1),
    withCorners(shape, 1, factor),
    { ...shape, derivativeTime: shape.derivativeTime * factor ** FILTER_STEPS },
  ]);
}

/** How many that are. */
export const NEIGHBOURS = 6;

function withCorners(shape: Shape, integrator: number, lead: number): Shape {
  const leadCorner = shape.leadCorner * lead;
  return {
    ...shape,
    leadCorner,
    integratorCorner: Math.min(shape.integratorCorner * integrator, leadCorner),
  };
}

/**
 * Shares by which the acceleration feedforward is tried off its balance. What delay leaves over of
 * a move's last jerk, and the integrator of its deceleration, can cancel where the table comes to
 * rest; whether they do, runs must tell.
 */
export const TRIMS = [-0.06, -0.04, -0.02, 0.02, 0.04, 0.06] as const;
