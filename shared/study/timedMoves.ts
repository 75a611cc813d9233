import { at } from '../core/at.ts';
import { entryProblem, type Failure, MAX_PROBLEMS, type Problem } from '../core/problem.ts';
import type { MoveLine } from '../core/scene.ts';
import { moveLimits } from '../motion/moveLimits.ts';
import { MOVE_ROWS, type MovePlace } from '../motion/moves.ts';
import { moveTimeProblem } from '../motion/moveTimes.ts';
import { Profile } from '../motion/profile.ts';

/** A move as a customer knows it: where to, how long it may take, how long to dwell there. SI. */
export interface TimedMove {
  readonly to: number;
  readonly time: number;
  readonly dwell: number;
  readonly force?: number;
}

/** A move is of this time if its limits are, but for the rounding of their digits. */
const ROUNDING = 1e-9;

/** Where a move begins: the list goes round, so the first one begins where the last one ends. */
function startOf(moves: readonly { readonly to: number }[], index: number): number {
  return at(moves, index === 0 ? moves.length - 1 : index - 1).to;
}

/** The limits under which each move takes its time. Where a line stays at its place, its time is standing time. */
export function withLimits(
  moves: readonly TimedMove[],
  place: MovePlace,
): { readonly moves: readonly MoveLine[] } | Failure {
  const problems: Problem[] = [];
  const limited = moves.map(({ to, time, dwell, ...cutting }, index): MoveLine => {
    const distance = Math.abs(to - startOf(moves, index));
    if (distance === 0) return { to, ...standing(), dwell: dwell + time, ...cutting };
    const wrong = moveTimeProblem(distance, time);
    if (wrong !== null) problems.push(entryProblem(place(index, 'time'), time, wrong));
    return { to, ...moveLimits(distance, time), dwell, ...cutting };
  });
  return problems.length > 0 ? { problems: problems.slice(0, MAX_PROBLEMS) } : { moves: limited };
}

/** Without a distance no limit is met; any legal one will do. */
function standing() {
  const { speed, acceleration, jerk } = MOVE_ROWS;
  return { speed: speed.default, acceleration: acceleration.default, jerk: jerk.default };
}

/** The same list with times in place of limits; null where a line has other limits than its time asks for. */
export function withTimes(moves: readonly MoveLine[]): readonly TimedMove[] | null {
  const profile = new Profile();
  const timed: TimedMove[] = [];
  for (const [index, { to, speed, acceleration, jerk, dwell, ...cutting }] of moves.entries()) {
    const distance = Math.abs(to - startOf(moves, index));
    profile.plan(distance, speed, acceleration, jerk);
    const asked = distance === 0 ? standing() : moveLimits(distance, profile.duration);
    const isOfTime = (value: number, wanted: number) => Math.abs(value / wanted - 1) < ROUNDING;
    if (
      !isOfTime(speed, asked.speed) ||
      !isOfTime(acceleration, asked.acceleration) ||
      !isOfTime(jerk, asked.jerk)
    )
      return null;
    timed.push({ to, time: profile.duration, dwell, ...cutting });
  }
  return timed;
}
