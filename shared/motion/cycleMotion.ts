import type { Scene } from '../core/scene.ts';
import { type CycleSegment, cycleSegments } from './cycle.ts';
import { newSegmentCommand, newSetpoint, type Setpoint, standAt } from './setpoint.ts';

/** A stretch of constant jerk, or of standstill, with the setpoints at its start, halfway and at its end. SI. */
export interface MotionStretch {
  readonly time: number;
  /** Which way it goes; 0 stands. */
  readonly direction: number;
  /** Force of the process against the motion that the move has of its own, N. */
  readonly cutting: number;
  /** Which move of the cycle it belongs to, from 0; a dwell belongs to the move before it. */
  readonly move: number;
  readonly points: readonly [start: Setpoint, middle: Setpoint, end: Setpoint];
}

/** Time span for a program that stands still or takes no time, s. */
const STANDSTILL = 1;

/** One cycle of the program in stretches. Without a motion it stands for a second. */
export function cycleMotion({ parameters: p, moves }: Scene): MotionStretch[] {
  const stretches: MotionStretch[] = [];
  let move = -1;
  for (const each of cycleSegments(p, moves)) {
    if (each.segment.moving) move++;
    stretches.push(...stretchesOf(each, Math.max(move, 0)));
  }
  return stretches.length > 0 ? stretches : [standing(p.start, 0)];
}

function stretchesOf({ from, segment }: CycleSegment, move: number): MotionStretch[] {
  if (segment.duration === Infinity) return [standing(from, move)];
  const now = newSegmentCommand();
  const at = (time: number): Setpoint => {
    segment.sample(time, now);
    const { position, speed, acceleration, jerk } = now;
    return { position, speed, acceleration, jerk };
  };
  const stretches: MotionStretch[] = [];
  let start = 0;
  for (const end of segment.corners()) {
    const time = end - start;
    if (time > 0) {
      const middle = at(start + 0.5 * time);
      const points = [at(start), middle, at(start + time)] as const;
      stretches.push({ time, direction: Math.sign(middle.speed), cutting: now.cutting, move, points });
    }
    start = end;
  }
  return stretches;
}

function standing(position: number, move: number): MotionStretch {
  const point = newSetpoint();
  standAt(position, point);
  return { time: STANDSTILL, direction: 0, cutting: 0, move, points: [point, point, point] };
}
