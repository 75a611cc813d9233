import type { Figure } from '../figures/figure.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';
import { dayPower, yearEnergy } from './read.ts';

interface YearFigure extends Figure {
  /** Null where the drive trips in the course of the day. */
  readonly of: (candidate: JudgedCandidate, job: Job) => number | null;
}

const absent = 'does not last the day';

/** What the electrical power of a day comes to. */
export const YEAR_FIGURES = {
  power: {
    label: 'Electrical power, mean of the day',
    unit: 'W',
    definition: 'With windings at their temperatures over the day, and so at a higher resistance.',
    absent,
    of: dayPower,
  },
  energy: {
    label: 'Energy per year',
    unit: 'kWh',
    definition: 'Mean power of the day over the hours and days of duty that the job states.',
    absent,
    of: (candidate, { values }) => yearEnergy(candidate, values),
  },
  cost: {
    label: 'Energy cost per year',
    unit: '',
    definition:
      'Mean power of the day over the hours and days of duty, at the price of energy that the job states, in your currency.',
    absent,
    of(candidate, { values }) {
      const energy = yearEnergy(candidate, values);
      return energy === null ? null : energy * values.energyPrice;
    },
  },
} as const satisfies Record<string, YearFigure>;
