import { positionRate } from '../../shared/core/crossChecks.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { runUp } from '../../shared/motion/moveLimits.ts';
import type { MoveLimits } from '../../shared/motion/profile.ts';
import type { Job } from '../../shared/study/job.ts';

/**
 * A scan at constant speed: where it starts and ends at rest, what is left out at first, and what
 * is measured. SI.
 */
export interface ScanPlan {
  readonly limits: MoveLimits;
  readonly from: number;
  readonly to: number;
  /** Distance from the end of the acceleration to the start of the measurement. */
  readonly runIn: number;
  readonly length: number;
}

/** Share of the travel that is kept free: the table overshoots its setpoint. */
const SPARE = 0.05;
/** Longest time to reach the speed, s, whatever the limits of the job. */
const LONGEST_RAMP = 0.5;
/** Left out after the acceleration: this time, s, or this share of the length if that is more. */
const RUN_IN_TIME = 0.25;
const RUN_IN_SHARE = 0.05;
/** Longest duration of a scan, s; longer ones are cut short. */
const LONGEST = 20;
/**
 * Where the travel is too short to reach the speed, the speed is reduced until this share of the
 * travel is left to measure.
 */
const MIN_MEASURED = 0.5;
/** The speed is limited so that the scan has at least this many samples. */
const MIN_SAMPLES = 500;

/**
 * The scan that a job asks for, in the middle of the travel; shorter or slower where it does not
 * fit.
 */
export function scanPlan(p: Parameters, { values }: Job): ScanPlan {
  const room = (1 - SPARE) * (p.travelMax - p.travelMin);
  const longest = (speed: number) =>
    Math.min(
      (room - 2 * runUp(limitsAt(p, speed)) - RUN_IN_TIME * speed) / (1 + RUN_IN_SHARE),
      LONGEST * speed,
    );
  let speed = Math.min(values.scanSpeed, (values.scanLength * positionRate(p)) / MIN_SAMPLES);
  while (longest(speed) < Math.min(values.scanLength, MIN_MEASURED * room, LONGEST * speed)) speed /= 2;
  const length = Math.min(values.scanLength, longest(speed));
  const runIn = Math.max(RUN_IN_TIME * speed, RUN_IN_SHARE * length);
  const limits = limitsAt(p, speed);
  const whole = length + runIn + 2 * runUp(limits);
  const from = (p.travelMin + p.travelMax - whole) / 2;
  return { limits, from, to: from + whole, runIn, length };
}

/** Limits of the job, or higher ones: v/a and a/j are at most half the longest ramp each. */
function limitsAt(p: Parameters, speed: number): MoveLimits {
  const acceleration = Math.max(p.acceleration, speed / (LONGEST_RAMP / 2));
  return { speed, acceleration, jerk: Math.max(p.jerk, acceleration / (LONGEST_RAMP / 2)) };
}
