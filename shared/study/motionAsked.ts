import { type CycleMove, cycleSegments } from '../motion/cycle.ts';
import { newSegmentCommand } from '../motion/setpoint.ts';
import type { Job } from './job.ts';
import { movesAsked, programOf } from './jobMotion.ts';

/** The motion that a job asks for, with what is told and drawn of it. SI. */
export interface MotionAsked {
  /** Of one cycle; it is repeated over and over, and begins where it ends. */
  readonly moves: readonly CycleMove[];
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
  const now = newSegmentCommand();
  const [time, position]: [number[], number[]] = [[], []];
  let [cycleTime, topSpeed, topAcceleration] = [0, 0, 0];
  for (const { begin, segment } of cycleSegments(programOf(job), job.moves)) {
    const { duration, moving } = segment;
    for (let k = moving ? 0 : POINTS; k <= POINTS; k++) {
      segment.sample((k / POINTS) * duration, now);
      time.push(begin + (k / POINTS) * duration);
      position.push(now.position);
    }
    // Speed and acceleration are highest where the jerk changes.
    for (const corner of segment.corners()) {
      segment.sample(corner, now);
      topSpeed = Math.max(topSpeed, Math.abs(now.speed));
      topAcceleration = Math.max(topAcceleration, Math.abs(now.acceleration));
    }
    cycleTime = begin + duration;
  }
  return { moves: movesAsked(job), cycleTime, topSpeed, topAcceleration, time, position };
}
