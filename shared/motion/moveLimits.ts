import type { MoveLimits } from './profile.ts';

/** Share of an acceleration that its jerk takes at each end. */
const JERK_SHARE = 0.25;

/**
 * Limits under which a move over `distance` takes exactly `time`: a third of it to speed up, a third at constant speed, a third to slow
 * down, which among trapezoids heats a motor least.
 *
 *     v = 1.5 s/t    T_a = t/3    T_j = T_a/4    a = v/(T_a − T_j)    j = a/T_j
 *
 * Source: the one-third trapezoid of motor sizing, e.g. J. Tal, Step-by-step Design of Motion Control Systems, 1994 (from memory);
 * with T_j its corners are rounded.
 */
export function moveLimits(distance: number, time: number): MoveLimits {
  const ramp = time / 3;
  const jerkTime = JERK_SHARE * ramp;
  const speed = (1.5 * distance) / time;
  const acceleration = speed / (ramp - jerkTime);
  return { speed, acceleration, jerk: acceleration / jerkTime };
}

/** Distance in which the speed is reached from rest, m: the speed times half the time it takes, v/a + a/j, or 2 √(v/j) where a is not reached. */
export function runUp({ speed, acceleration, jerk }: MoveLimits): number {
  const reachesAcceleration = speed * jerk > acceleration ** 2;
  const time = reachesAcceleration ? speed / acceleration + acceleration / jerk : 2 * Math.sqrt(speed / jerk);
  return (speed * time) / 2;
}
