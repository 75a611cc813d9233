import type { Parameters } from '../../shared/parameters/table.ts';
import type { Job } from '../../shared/study/job.ts';

/** A scan at constant speed: where it begins from rest and ends, what is left out at first, and what is measured. m, m/s. */
export interface ScanPlan {
  readonly speed: number;
  readonly from: number;
  readonly to: number;
  /** From the end of the acceleration to where the measurement begins. */
  readonly runIn: number;
  readonly length: number;
}

/** Left out after the acceleration: so much time, s, or this share of the length if that is more. */
const RUN_IN_TIME = 0.25;
const RUN_IN_SHARE = 0.05;
/** Longer scans are cut short, s. */
const LONGEST = 40;
/** Where the travel is too short to reach the speed, it is lowered until this share of the travel is left to measure. */
const LEAST_MEASURED = 0.5;

/** The scan that a job asks for, in the middle of the travel; shorter or slower where it does not fit. */
export function scanPlan(p: Parameters, { values }: Job): ScanPlan {
  const room = p.travelMax - p.travelMin;
  let speed = values.scanSpeed;
  const longest = () =>
    Math.min((room - 2 * ramp(p, speed) - RUN_IN_TIME * speed) / (1 + RUN_IN_SHARE), LONGEST * speed);
  while (longest() < Math.min(values.scanLength, LEAST_MEASURED * room, LONGEST * speed)) speed /= 2;
  const length = Math.min(values.scanLength, longest());
  const runIn = Math.max(RUN_IN_TIME * speed, RUN_IN_SHARE * length);
  const whole = length + runIn + 2 * ramp(p, speed);
  const from = (p.travelMin + p.travelMax - whole) / 2;
  return { speed, from, to: from + whole, runIn, length };
}

/** Distance in which a jerk-limited motion reaches a speed: the speed times half the time it takes. */
function ramp({ acceleration, jerk }: Parameters, speed: number): number {
  const time =
    speed > acceleration ** 2 / jerk
      ? speed / acceleration + acceleration / jerk
      : 2 * Math.sqrt(speed / jerk);
  return (speed * time) / 2;
}
