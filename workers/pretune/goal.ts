import { shortest } from '../../shared/core/format.ts';
import type { NumberRow } from '../../shared/core/parameters/row.ts';
import { PARAMETERS } from '../../shared/core/parameters/table.ts';
import { GOAL_ROWS, type PretuneGoal } from '../../shared/protocol/pretune.ts';
import type { LoopLimit } from './loopLimit.ts';

/** @throws RangeError naming the value of the goal that is out of range, with the allowed range */
export function limitOf(goal: PretuneGoal): LoopLimit {
  switch (goal.kind) {
    case 'peak sensitivity':
      check('limit', goal.limit, GOAL_ROWS.sensitivity);
      return { kind: 'peak sensitivity', limit: goal.limit };
    case 'margins':
      check('phase', goal.phase, GOAL_ROWS.phase);
      check('gain', goal.gain, GOAL_ROWS.gain);
      return { kind: 'margins', phase: goal.phase, gain: goal.gain };
    case 'settling':
      check('window', goal.window, PARAMETERS.window);
      check('sensitivityLimit', goal.sensitivityLimit, GOAL_ROWS.sensitivity);
      return { kind: 'peak sensitivity', limit: goal.sensitivityLimit };
  }
}

function check(name: string, value: number, { min, max, unit }: NumberRow): void {
  if (!(value >= min && value <= max))
    throw new RangeError(
      `${name} is ${Number.isFinite(value) ? shortest(value, unit) : value}; allowed is ${shortest(min, unit)} to ${shortest(max, unit)}.`,
    );
}

/** The limit as text. */
export function limitText(limit: LoopLimit): string {
  return limit.kind === 'peak sensitivity'
    ? `a peak sensitivity of ${shortest(limit.limit, '')}`
    : `a phase margin of ${shortest(limit.phase, '°')} with a gain margin of ${shortest(limit.gain, '')}`;
}

/** What to do where no loop keeps the limit. */
export function lessStrict({ kind }: LoopLimit): string {
  return kind === 'peak sensitivity' ? 'Allow a higher one' : 'Ask for smaller ones';
}
