import { GRAVITY } from '../axis/gravity.ts';
import { at } from '../core/at.ts';
import type { Travel } from '../core/crossChecks.ts';
import { PARAMETERS } from '../core/parameters/table.ts';
import { exactly, type Sentence, sentence } from '../core/sentence.ts';
import { runUp } from '../motion/moveLimits.ts';
import { moveTimeProblem } from '../motion/moveTimes.ts';
import type { Job, JobEntry, JobValues } from './job.ts';
import { motionLimits } from './jobMotion.ts';

/** A condition between the values of a job. `broken` says what is wrong and how to fix it, or null. */
interface JobRule {
  /** Beside which it is said. */
  readonly field: JobEntry;
  broken(job: Job): Sentence | null;
}

/** Mass of motors that a counterbalance has to carry beside the load at most, kg: four of the largest, with reserve. */
const MOTOR_MASS = 250;

/** Positions are measured from the middle of the travel, m. */
export function travelOf({ travel }: JobValues): Travel {
  return { travelMin: -travel / 2, travelMax: travel / 2 };
}

/** A travel without ends. */
export const ANYWHERE: Travel = { travelMin: -Infinity, travelMax: Infinity };

export const JOB_RULES: readonly JobRule[] = [
  {
    field: 'stroke',
    broken: ({ values: { motion, stroke, travel } }) =>
      motion !== 'back and forth' || stroke <= travel
        ? null
        : sentence`${exactly(stroke, 'mm')} is longer than the travel of the machine, ${exactly(travel, 'mm')}.
            Shorten it or widen the travel.`,
  },
  {
    field: 'moveTime',
    broken: ({ values: { motion, stroke, moveTime } }) =>
      motion === 'back and forth' ? moveTimeProblem(stroke, moveTime) : null,
  },
  {
    field: 'motion',
    broken: ({ values: { motion }, moves }) =>
      motion !== 'move list' || moves.some(({ to }) => to !== at(moves, 0).to)
        ? null
        : ['a move list needs at least two different positions. Paste the list, one move per line.'],
  },
  {
    field: 'scanLength',
    broken: (job) => {
      const { scanLength, scanSpeed, travel, rippleLimit } = job.values;
      if (rippleLimit === 0) return null;
      const limits = motionLimits(job);
      if (limits === null) return null;
      const ends = 2 * runUp({ ...limits, speed: scanSpeed });
      if (scanLength + ends <= travel) return null;
      return sentence`${exactly(scanLength, 'mm')} and ${exactly(ends, 'mm', 3)} to reach
        ${exactly(scanSpeed, 'mm/s')} and to stop are longer than the travel, ${exactly(travel, 'mm')}.
        Shorten the scan, scan more slowly, or widen the travel.`;
    },
  },
  {
    field: 'processTime',
    broken: ({ values: { process, processTime, processFrequency } }) =>
      process !== 'pulse' || processTime * processFrequency <= 1
        ? null
        : sentence`${exactly(processTime, 'ms')} is longer than the interval between pulses,
            ${exactly(1 / processFrequency, 'ms')}. Shorten the pulse or lower its frequency.`,
  },
  {
    field: 'counterbalanced',
    broken: ({ values }) => {
      const { payload, tableMass, inclination, counterbalanced } = values;
      const carried =
        counterbalanced * (payload + tableMass + MOTOR_MASS) * GRAVITY * Math.abs(Math.sin(inclination));
      const max = PARAMETERS.counterbalance.max;
      return carried <= max
        ? null
        : sentence`it would have to carry ${exactly(carried, 'N', 3)}, with motors of up to
            ${exactly(MOTOR_MASS, 'kg')}; the limit is ${exactly(max, 'N')}.
            Lower the share, the load, or the slope.`;
    },
  },
];
