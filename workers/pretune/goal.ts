import { shortest } from '../../shared/core/format.ts';
import { PARAMETERS } from '../../shared/core/parameters/table.ts';
import type { Unit } from '../../shared/core/units.ts';
import type { PretuneGoal } from '../../shared/protocol/pretune.ts';
import type { LoopLimit } from './loopLimit.ts';

const SENSITIVITY = [1.1, 4] as const;
const PHASE = [Math.PI / 18, (8 * Math.PI) / 18] as const;
const GAIN = [1.2, 20] as const;

/** @throws RangeError naming what of the goal cannot be, with the allowed range */
export function limitOf(goal: PretuneGoal): LoopLimit {
  switch (goal.kind) {
    case 'peak sensitivity':
      check('limit', goal.limit, SENSITIVITY, '');
      return { kind: 'peak sensitivity', limit: goal.limit };
    case 'margins':
      check('phase', goal.phase, PHASE, '°');
      check('gain', goal.gain, GAIN, '');
      return { kind: 'margins', phase: goal.phase, gain: goal.gain };
    case 'settling': {
      const { min, max, unit } = PARAMETERS.window;
      check('window', goal.window, [min, max], unit);
      check('sensitivityLimit', goal.sensitivityLimit, SENSITIVITY, '');
      return { kind: 'peak sensitivity', limit: goal.sensitivityLimit };
    }
  }
}

function check(name: string, value: number, [min, max]: readonly [number, number], unit: Unit): void {
  if (!(value >= min && value <= max))
    throw new RangeError(
      `${name} is ${Number.isFinite(value) ? shortest(value, unit) : value}; allowed is ${shortest(min, unit)} to ${shortest(max, unit)}.`,
    );
}

/** The limit in words. */
export function limitText(limit: LoopLimit): string {
  return limit.kind === 'peak sensitivity'
    ? `a peak sensitivity of ${shortest(limit.limit, '')}`
    : `a phase margin of ${shortest(limit.phase, '°')} with a gain margin of ${shortest(limit.gain, '')}`;
}

/** What is to be done where nothing keeps the limit. */
export function lessStrict({ kind }: LoopLimit): string {
  return kind === 'peak sensitivity' ? 'Allow a higher one' : 'Ask for smaller ones';
}
