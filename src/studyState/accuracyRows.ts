import { inUnit, ranged } from '../../shared/core/format.ts';
import { type Unit, type UnitSystem, unitIn } from '../../shared/core/units.ts';
import type {
  DisturbanceTest,
  IncrementTest,
  PositioningFigures,
  PositioningTest,
  RippleTest,
  StaircaseTest,
} from '../../shared/protocol/accuracy.ts';
import type { JobValues } from '../../shared/study/job.ts';

/** A figure of a test: what it is called, what it means, where it is read. SI. */
export interface TestRow<T> {
  readonly id: string;
  readonly label: string;
  readonly definition: string;
  readonly text: (test: T, units: UnitSystem) => string;
  /** Whether it is not what the job asks for. */
  readonly fails?: (test: T, job: JobValues) => boolean;
}

function figure<T>(
  id: string,
  label: string,
  unit: Unit,
  of: (test: T) => number | null,
  definition: string,
  absent = '—',
): TestRow<T> {
  return {
    id,
    label,
    definition,
    text(test, units) {
      const value = of(test);
      return value === null ? absent : ranged(value, unitIn(units, unit));
    },
  };
}

const positioned = (label: string, name: keyof PositioningFigures, definition: string) =>
  figure<PositioningTest>(`iso-${name}`, label, 'µm', ({ figures }) => figures[name] as number, definition);

/** After ISO 230-2:2014, from memory: the terms are those of the standard, the words are ours. */
export const POSITIONING_ROWS: readonly TestRow<PositioningTest>[] = [
  positioned(
    'Accuracy A, both ways',
    'accuracy',
    'From the lowest to the highest of all means ± 2s (s: standard deviation), of both directions and all targets: a band that holds nearly every approach.',
  ),
  positioned(
    'Accuracy A, in +x',
    'accuracyUp',
    'The same of the approaches in +x alone: without lost motion.',
  ),
  positioned('Accuracy A, in −x', 'accuracyDown', 'The same of the approaches in −x alone.'),
  positioned(
    'Systematic error E, both ways',
    'systematic',
    'From the lowest to the highest mean of both directions: what could be taken out by a table of corrections, and what lost motion adds.',
  ),
  positioned('Systematic error E, in +x', 'systematicUp', 'The same of the approaches in +x alone.'),
  positioned('Systematic error E, in −x', 'systematicDown', 'The same of the approaches in −x alone.'),
  positioned(
    'Range of the mean M',
    'meanRange',
    'From the lowest to the highest of the means of both directions at each target: errors along the way, without lost motion.',
  ),
  positioned(
    'Repeatability R, both ways',
    'repeatability',
    'At the worst target, how far apart approaches of either direction come to stand: 2s of both and what their means differ by, or 4s of one if that is more (s: standard deviation).',
  ),
  positioned('Repeatability R, in +x', 'repeatabilityUp', '4s of the approaches in +x, at the worst target.'),
  positioned(
    'Repeatability R, in −x',
    'repeatabilityDown',
    '4s of the approaches in −x, at the worst target.',
  ),
  positioned(
    'Reversal error B',
    'reversal',
    'At the worst target, how far the means of the two directions are apart: backlash, wind-up and friction.',
  ),
  positioned('Reversal error B, mean', 'meanReversal', 'The same as the mean of all targets, with its sign.'),
];

export const STAIRCASE_ROWS: readonly TestRow<StaircaseTest>[] = [
  figure('stair-step', 'Height of a stair', 'nm', ({ step }) => step, 'As it is set.'),
  figure(
    'stair-error',
    'Largest error',
    'nm',
    ({ largestError }) => largestError,
    'Largest difference of the mean on a stair from its set height.',
  ),
  figure(
    'stair-noise',
    'Noise, RMS',
    'nm',
    ({ noise }) => noise,
    'Root of the mean square by which the tool leaves its mean while it stands on a stair.',
  ),
];

export const RIPPLE_ROWS: readonly TestRow<RippleTest>[] = [
  figure(
    'ripple-speed',
    'Speed of the scan',
    'mm/s',
    ({ speed }) => speed,
    'As the job asks, or slower where the travel is too short to reach it.',
  ),
  figure(
    'ripple-length',
    'Length of the scan',
    'mm',
    ({ length }) => length,
    'As the job asks, or what the travel and twenty seconds have room for.',
  ),
  {
    id: 'ripple-peak',
    label: 'Ripple, peak',
    definition:
      'Half of what lies between the lowest and the highest speed of the table, over the set speed.',
    text: ({ peak }) => inUnit(peak, '%'),
    fails: ({ peak }, { rippleLimit }) => peak > rippleLimit,
  },
  {
    id: 'ripple-rms',
    label: 'Ripple, RMS',
    definition: 'Root of the mean square of the deviation from the set speed, over the set speed.',
    text: ({ rms }) => inUnit(rms, '%'),
  },
];

export const INCREMENT_ROWS: readonly TestRow<IncrementTest>[] = [
  figure(
    'increment-smallest',
    'Smallest step',
    'nm',
    ({ smallest }) => smallest,
    'Smallest of the steps tried that the tool takes for certain, one after the other in the same direction.',
    'none of those tried',
  ),
];

export const DISTURBANCE_ROWS: readonly TestRow<DisturbanceTest>[] = [
  figure('force-size', 'Force', 'N', ({ force }) => force, 'It comes at once, and stays.'),
  figure('force-peak', 'Largest deviation', 'µm', ({ peak }) => peak, 'Of the table, from where it stood.'),
  figure(
    'force-stiffness',
    'Stiffness against a force',
    'N/µm',
    ({ stiffness }) => stiffness,
    'The force divided by the largest deviation: how stiff the axis is to something that comes quickly. In the long run the integrator brings the error to nothing.',
  ),
  figure(
    'force-recovery',
    'Recovery',
    's',
    ({ recovery }) => recovery,
    'From the force until the error stays within the window of the job, plus or minus.',
    'does not come back',
  ),
];
