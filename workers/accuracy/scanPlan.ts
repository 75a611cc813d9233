import { positionRate } from '../../shared/core/crossChecks.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { runUp } from '../../shared/motion/moveLimits.ts';
import type { MoveLimits } from '../../shared/motion/profile.ts';
import type { Job } from '../../shared/study/job.ts';

/**
 * A scan at constant speed: where it begins from rest and ends, what is left out at first, and what
 * is measured. SI.
 */
export interface ScanPlan {
  readonly limits: MoveLimits;
  readonly from: number;
  readonly to: number;
  /** From the end of the acceleration to where the measurement begins. */
  readonly runIn: number;
  readonly length: number;
}

/**
 * Share of the room between the travel limits that is not run into: the table swings beyond its
 * setpoint.
 */
const SPARE = 0.05;
/** The axis reaches the speed in this time at most, s, whatever the limits of the job. */
const LONGEST_RAMP = 0.5;
/**
 * Left out after the acceleration: so much time, s, or this share of the length if that is more.
 */
const RUN_IN_TIME = 0.25;
const RUN_IN_SHARE = 0.05;
/** Longer scans are cut short, s. */
const LONGEST = 20;
/**
 * Where the travel is too short to reach the speed, it is lowered until this share of the travel is
 * left to measure.
 */
const MIN_MEASURED = 0.5;
/** No faster than gives so many samples. */
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

/** Those of the job, or quicker: v/a and a/j are half the longest ramp each. */
function limitsAt(p: Parameters, speed: number): MoveLimits {
  const acceleration = Math.max(p.acceleration, speed / (LONGEST_RAMP / 2));
  return { speed, acceleration, jerk: Math.max(p.jerk, acceleration / (LONGEST_RAMP / 2)) };
}
