/** Figures of the acceptance tests, in the order in which a person reads them. */
import type {
  DisturbanceTest,
  IncrementTest,
  PositioningFigures,
  PositioningTest,
  RippleTest,
  StaircaseTest,
} from '../protocol/accuracy.ts';
import type { FigureOf } from './figure.ts';

type NumberName = {
  [K in keyof PositioningFigures]: PositioningFigures[K] extends number ? K : never;
}[keyof PositioningFigures];

const positioned = (name: NumberName, label: string, definition: string): FigureOf<PositioningTest> => ({
  label,
  unit: 'µm',
  definition,
  of: ({ figures }) => figures[name],
});

/**
 * After ISO 230-2:2014, from memory: the terms are those of the standard, the definitions are in our words. Its letters are left out: A and B
 * are drives here.
 */
export const POSITIONING_FIGURES = {
  accuracy: positioned(
    'accuracy',
    'Bidirectional accuracy',
    'From the lowest to the highest of all means ± 2s (s: standard deviation), of both directions and all targets: a band that contains nearly every approach.',
  ),
  accuracyUp: positioned(
    'accuracyUp',
    'Unidirectional accuracy, in +x',
    'The same for the approaches in +x alone: without lost motion.',
  ),
  accuracyDown: positioned(
    'accuracyDown',
    'Unidirectional accuracy, in −x',
    'The same for the approaches in −x alone.',
  ),
  systematic: positioned(
    'systematic',
    'Bidirectional systematic error',
    'From the lowest to the highest mean of both directions: the part that a correction table could remove, plus lost motion.',
  ),
  systematicUp: positioned(
    'systematicUp',
    'Unidirectional systematic error, in +x',
    'The same for the approaches in +x alone.',
  ),
  systematicDown: positioned(
    'systematicDown',
    'Unidirectional systematic error, in −x',
    'The same for the approaches in −x alone.',
  ),
  meanRange: positioned(
    'meanRange',
    'Range of the mean',
    'From the lowest to the highest of the means of both directions at each target: errors along the travel, without lost motion.',
  ),
  repeatability: positioned(
    'repeatability',
    'Bidirectional repeatability',
    'At the worst target, the band that contains the approaches from both directions: 2s of both and the difference of their means, or 4s of one if that is more (s: standard deviation).',
  ),
  repeatabilityUp: positioned(
    'repeatabilityUp',
    'Unidirectional repeatability, in +x',
    '4s of the approaches in +x, at the worst target.',
  ),
  repeatabilityDown: positioned(
    'repeatabilityDown',
    'Unidirectional repeatability, in −x',
    '4s of the approaches in −x, at the worst target.',
  ),
  reversal: positioned(
    'reversal',
    'Reversal error',
    'At the worst target, the difference between the means of the two directions: backlash, wind-up and friction.',
  ),
  meanReversal: positioned(
    'meanReversal',
    'Reversal error, mean',
    'The same as the mean over all targets, with its sign.',
  ),
} as const satisfies Partial<Record<NumberName, FigureOf<PositioningTest>>>;

export const STAIRCASE_FIGURES = {
  step: {
    label: 'Height of a stair',
    unit: 'nm',
    definition: 'As commanded.',
    of: ({ step }) => step,
  },
  largestError: {
    label: 'Error of a stair, largest',
    unit: 'nm',
    definition: 'Largest difference between the mean on a stair and its commanded height.',
    of: ({ largestError }) => largestError,
  },
  noise: {
    label: 'Noise at standstill, RMS',
    unit: 'nm',
    definition: 'Root mean square of the deviation of the tool from its mean while it stands on a stair.',
    of: ({ noise }) => noise,
  },
} as const satisfies Record<string, FigureOf<StaircaseTest>>;

export const RIPPLE_FIGURES = {
  speed: {
    label: 'Speed of the scan',
    unit: 'mm/s',
    definition: 'As specified by the job, or slower where the travel is too short to reach that speed.',
    of: ({ speed }) => speed,
  },
  length: {
    label: 'Length of the scan',
    unit: 'mm',
    definition: 'As specified by the job, or as long as travel and twenty seconds allow.',
    of: ({ length }) => length,
  },
  bandwidth: {
    label: 'Bandwidth of the ripple',
    unit: 'Hz',
    definition:
      'As specified by the job: −3 dB of a Butterworth low-pass of second order on the table speed.',
    of: ({ bandwidth }) => bandwidth,
  },
  peak: {
    label: 'Speed ripple of the scan in its bandwidth, peak',
    unit: '%',
    definition:
      'Half the peak-to-peak of the table speed in a scan at constant speed, as a share of that speed, behind the low-pass.',
    of: ({ inBand }) => inBand.peak,
  },
  rms: {
    label: 'Speed ripple of the scan in its bandwidth, RMS',
    unit: '%',
    definition: 'Root mean square of the deviation from the set speed behind the low-pass, as a share of it.',
    of: ({ inBand }) => inBand.rms,
  },
  unfilteredPeak: {
    label: 'Speed ripple of the scan, unfiltered, peak',
    unit: '%',
    definition: 'The same of every sample of the table speed.',
    of: ({ peak }) => peak,
  },
  unfilteredRms: {
    label: 'Speed ripple of the scan, unfiltered, RMS',
    unit: '%',
    definition: 'The same of every sample of the table speed.',
    of: ({ rms }) => rms,
  },
} as const satisfies Record<string, FigureOf<RippleTest>>;

export const INCREMENT_FIGURES = {
  smallest: {
    label: 'Minimum incremental motion at the tool',
    unit: 'nm',
    definition:
      'Smallest step tested that the tool makes every time, one after another in the same direction.',
    absent: 'none of those tested',
    of: ({ smallest }) => smallest,
  },
} as const satisfies Record<string, FigureOf<IncrementTest>>;

export const DISTURBANCE_FIGURES = {
  force: {
    label: 'Force step',
    unit: 'N',
    definition: 'Applied to the table as a step, and held.',
    of: ({ force }) => force,
  },
  peak: {
    label: 'Deviation under the force step, peak',
    unit: 'µm',
    definition: 'Of the table, from its position before the step.',
    of: ({ peak }) => peak,
  },
  stiffness: {
    label: 'Stiffness against a force step',
    unit: 'N/µm',
    definition:
      'The force divided by the peak deviation: how stiff the axis is against a sudden force. The integrator then removes the error.',
    of: ({ stiffness }) => stiffness,
  },
  recovery: {
    label: 'Recovery from the force step',
    unit: 's',
    definition: 'From the force step until the error stays within the window of the job, plus or minus.',
    absent: 'does not recover',
    of: ({ recovery }) => recovery,
  },
} as const satisfies Record<string, FigureOf<DisturbanceTest>>;
