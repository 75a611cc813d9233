import type { MoveLine, Scene } from '../core/scene.ts';
import { Profile } from './profile.ts';
import { newSetpoint, type Setpoint } from './setpoint.ts';

/** A stretch of constant jerk, or of standstill, with the setpoints at its start, halfway and at its end. SI. */
export interface MotionStretch {
  readonly time: number;
  /** Which way it goes; 0 stands. */
  readonly direction: -1 | 0 | 1;
  /** Which move of the cycle it belongs to, from 0; a dwell belongs to the move before it. */
  readonly move: number;
  readonly points: readonly [start: Setpoint, middle: Setpoint, end: Setpoint];
}

/** One cycle of the program over and over: back and forth, or the lines of the move list, the first from where the last ends. Without a motion it
 * stands for a second. */
export function cycleMotion({ parameters: p, moves }: Scene): MotionStretch[] {
  const there = { ...p, to: p.start + p.stroke };
  const lines: readonly MoveLine[] = p.program === 'list' ? moves : [there, { ...p, to: p.start }];
  let from = lines.at(-1)?.to ?? p.start;
  const stretches = lines.flatMap((line, move) => {
    const whole = [...movement(from, line, move), standing(line, move)];
    from = line.to;
    return whole.filter(({ time }) => time > 0);
  });
  return stretches.length > 0 ? stretches : [standing({ ...there, to: p.start, dwell: 1 }, 0)];
}

function movement(from: number, line: MoveLine, move: number): MotionStretch[] {
  const profile = new Profile();
  profile.plan(line.to - from, line.speed, line.acceleration, line.jerk);
  const corners = profile.corners();
  const direction = line.to > from ? 1 : -1;
  return corners.slice(1).map((end, k) => {
    const start = corners[k]!;
    const time = end - start;
    const at = (share: number): Setpoint => {
      const point = newSetpoint();
      profile.sample(start + share * time, point);
      point.position += from;
      return point;
    };
    return { time, direction, move, points: [at(0), at(0.5), at(1)] };
  });
}

function standing({ to, dwell }: MoveLine, move: number): MotionStretch {
  const point = { ...newSetpoint(), position: to };
  return { time: dwell, direction: 0, move, points: [point, point, point] };
}
