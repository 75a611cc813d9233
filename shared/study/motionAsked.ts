import type { MoveLine } from '../core/scene.ts';
import { Profile } from '../motion/profile.ts';
import { newSetpoint } from '../motion/setpoint.ts';
import type { Job } from './job.ts';
import { moveLimits } from './moveLimits.ts';

/** A move of a cycle, with the standstill after it: m, s. */
export interface AskedMove {
  readonly from: number;
  readonly to: number;
  readonly begin: number;
  readonly time: number;
  readonly dwell: number;
}

/** The motion of a job as it is asked for, before any drive has a say. SI. */
export interface MotionAsked {
  /** Of one cycle; it is repeated over and over, and begins where it ends. */
  readonly moves: readonly AskedMove[];
  readonly cycleTime: number;
  readonly topSpeed: number;
  readonly topAcceleration: number;
  /** Time and position of points close enough to draw the cycle. */
  readonly time: readonly number[];
  readonly position: readonly number[];
}

/** Points by which a move is drawn. */
const POINTS = 48;

export function motionAsked(job: Job): MotionAsked {
  const lines = linesOf(job);
  const profile = new Profile();
  const now = newSetpoint();
  const [moves, time, position]: [AskedMove[], number[], number[]] = [[], [], []];
  let [begin, topSpeed, topAcceleration] = [0, 0, 0];
  for (const [index, { to, speed, acceleration, jerk, dwell }] of lines.entries()) {
    const from = lines.at(index - 1)!.to;
    profile.plan(to - from, speed, acceleration, jerk);
    const { duration } = profile;
    for (let k = 0; k <= POINTS; k++) {
      profile.sample((k / POINTS) * duration, now);
      time.push(begin + (k / POINTS) * duration);
      position.push(from + now.position);
    }
    // Speed and acceleration are highest where the jerk changes.
    for (const corner of profile.corners()) {
      profile.sample(corner, now);
      topSpeed = Math.max(topSpeed, Math.abs(now.speed));
      topAcceleration = Math.max(topAcceleration, Math.abs(now.acceleration));
    }
    moves.push({ from, to, begin, time: duration, dwell });
    begin += duration + dwell;
    time.push(begin);
    position.push(to);
  }
  return { moves, cycleTime: begin, topSpeed, topAcceleration, time, position };
}

/** The moves of one cycle: one and its return, or the list. */
export function linesOf({ values, moves }: Job): readonly MoveLine[] {
  if (values.motion === 'move list') return moves;
  const { stroke, moveTime, dwell } = values;
  const limits = moveLimits(stroke, moveTime);
  return [
    { to: stroke / 2, ...limits, dwell },
    { to: -stroke / 2, ...limits, dwell },
  ];
}
