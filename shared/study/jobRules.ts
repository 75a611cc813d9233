import { GRAVITY } from '../axis/gravity.ts';
import { at } from '../core/at.ts';
import type { Travel } from '../core/crossChecks.ts';
import { shortest } from '../core/format.ts';
import { PARAMETERS } from '../core/parameters/table.ts';
import { type Unit, type UnitSystem, unitIn } from '../core/units.ts';
import { runUp } from '../motion/moveLimits.ts';
import { moveTimeProblem } from '../motion/moveTimes.ts';
import type { Job, JobEntry, JobValues } from './job.ts';
import { motionLimits } from './jobMotion.ts';

/** A condition between the values of a job. `broken` says what is wrong and how to mend it, or null. */
interface JobRule {
  /** Beside which it is said. */
  readonly field: JobEntry;
  broken(job: Job, system: UnitSystem): string | null;
}

/** Mass of motors that a counterbalance has to carry beside the load at most, kg: four of the largest, with reserve. */
const MOTOR_MASS = 250;

/** Positions count from the middle of the travel, m. */
export function travelOf({ travel }: JobValues): Travel {
  return { travelMin: -travel / 2, travelMax: travel / 2 };
}

/** A travel without ends. */
export const ANYWHERE: Travel = { travelMin: -Infinity, travelMax: Infinity };

const text = (value: number, unit: Unit, system: UnitSystem, digits?: number) =>
  shortest(value, unitIn(system, unit), digits);

export const JOB_RULES: readonly JobRule[] = [
  {
    field: 'stroke',
    broken: ({ values: { motion, stroke, travel } }, system) =>
      motion !== 'back and forth' || stroke <= travel
        ? null
        : `${text(stroke, 'mm', system)} is longer than the travel of the machine, ${text(travel, 'mm', system)}. ` +
          'Shorten it or widen the travel.',
  },
  {
    field: 'moveTime',
    broken: ({ values: { motion, stroke, moveTime } }, system) =>
      motion === 'back and forth' ? moveTimeProblem(stroke, moveTime, system) : null,
  },
  {
    field: 'motion',
    broken: ({ values: { motion }, moves }) =>
      motion !== 'move list' || moves.some(({ to }) => to !== at(moves, 0).to)
        ? null
        : 'a move list needs two different positions at least. Paste the list, one move a line.',
  },
  {
    field: 'scanLength',
    broken: (job, system) => {
      const { scanLength, scanSpeed, travel } = job.values;
      const limits = motionLimits(job);
      if (limits === null) return null;
      const ends = 2 * runUp({ ...limits, speed: scanSpeed });
      if (scanLength + ends <= travel) return null;
      return (
        `${text(scanLength, 'mm', system)} and ${text(ends, 'mm', system, 3)} to reach ` +
        `${text(scanSpeed, 'mm/s', system)} and to stop are longer than the travel, ${text(travel, 'mm', system)}. ` +
        'Shorten the scan, scan slower, or widen the travel.'
      );
    },
  },
  {
    field: 'processTime',
    broken: ({ values: { process, processTime, processFrequency } }, system) =>
      process !== 'pulse' || processTime * processFrequency <= 1
        ? null
        : `${text(processTime, 'ms', system)} is longer than the pulses are apart, ${text(1 / processFrequency, 'ms', system)}. ` +
          'Shorten the pulse or lower its frequency.',
  },
  {
    field: 'counterbalanced',
    broken: ({ values }, system) => {
      const { payload, tableMass, inclination, counterbalanced } = values;
      const carried =
        counterbalanced * (payload + tableMass + MOTOR_MASS) * GRAVITY * Math.abs(Math.sin(inclination));
      const max = PARAMETERS.counterbalance.max;
      return carried <= max
        ? null
        : `it would have to carry ${text(carried, 'N', system, 3)}, with motors of up to ` +
            `${text(MOTOR_MASS, 'kg', system)}; ${text(max, 'N', system)} is the most. Lower the share, the load, or the slope.`;
    },
  },
];
