import type { Parameters } from '../../shared/core/parameters/table.ts';
import { moveLimits } from '../../shared/motion/moveLimits.ts';
import type { MoveLimits } from '../../shared/motion/profile.ts';

/**
 * A job may be slower than anyone would test: then a move takes this time, s, but no more than half
 * the tripping speed.
 */
const LONGEST_MOVE = 1;
const SPEED_SHARE = 0.5;

/**
 * Limits of the moves of a test: those of the job, or higher ones where a move over `distance`, m,
 * would take longer than a second.
 */
export function testLimits(p: Parameters, distance: number): MoveLimits {
  const quick = moveLimits(distance, LONGEST_MOVE);
  return {
    speed: Math.max(p.speed, Math.min(quick.speed, SPEED_SHARE * p.speedLimit)),
    acceleration: Math.max(p.acceleration, quick.acceleration),
    jerk: Math.max(p.jerk, quick.jerk),
  };
}
