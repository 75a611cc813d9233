import type { Job } from './job.ts';
import { type MoveLimits, moveLimits } from './moveLimits.ts';

/** Limits of the moves of a job, of a list the highest; null for an empty list. */
export function motionLimits({ values, moves }: Job): MoveLimits | null {
  if (values.motion === 'back and forth') return moveLimits(values.stroke, values.moveTime);
  if (moves.length === 0) return null;
  const max = (name: keyof MoveLimits) => Math.max(...moves.map((line) => line[name]));
  return { speed: max('speed'), acceleration: max('acceleration'), jerk: max('jerk') };
}
