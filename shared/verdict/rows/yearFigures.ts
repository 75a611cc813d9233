import type { Figure } from '../../figures/figure.ts';
import type { Job } from '../../study/job.ts';
import type { JudgedCandidate } from '../judgement.ts';
import { costsOf, mainsPower } from './costs.ts';

interface YearFigure extends Figure {
  /** Null where the drive trips in the course of the day. */
  readonly of: (candidate: JudgedCandidate, job: Job) => number | null;
}

const absent = 'does not last the day';

/** What the electrical power of a day comes to. */
export const YEAR_FIGURES = {
  power: {
    label: 'Power from the mains, mean of the day',
    unit: 'W',
    definition:
      'With windings at their temperatures over the day; braking energy that the bus does not store is burnt, unless the supply feeds it back.',
    absent,
    of: mainsPower,
  },
  energy: {
    label: 'Energy per year',
    unit: 'kWh',
    definition: 'Mean power of the day over the hours and days of duty that the job states.',
    absent,
    of: (candidate, job) => costsOf(candidate, job).yearEnergy,
  },
  cost: {
    label: 'Energy cost per year',
    unit: '',
    definition: 'Energy from the mains at the price of energy that the job states, in your currency.',
    absent,
    of: (candidate, job) => costsOf(candidate, job).energy,
  },
} as const satisfies Record<string, YearFigure>;
