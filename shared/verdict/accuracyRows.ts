import { inUnit } from '../core/format.ts';
import { encoderCause, rippleCause } from './causes.ts';
import { moveRow } from './moveRow.ts';
import { positioningIn, testOf } from './read.ts';
import { figureRow } from './row.ts';

/** Of a mean and a spread over a few approaches no more can be told apart. */
const OF_A_TEST = { absolute: 2e-9, relative: 0.05 };

export const ACCURACY_ROWS = [
  moveRow('peakError', {
    id: 'peakError',
    group: 'accuracy',
    resolution: { absolute: 2e-9, relative: 0.03 },
    speech: {
      weight: 0.7,
      family: 'following',
      verb: 'has',
      noun: 'a peak following error',
      measure: 'size',
      mattersFrom: ({ values }) => 10 * values.window,
    },
  }),
  moveRow('rmsError', {
    id: 'rmsError',
    group: 'accuracy',
    resolution: { absolute: 1e-9, relative: 0.03 },
  }),
  figureRow({
    id: 'accuracyCold',
    group: 'accuracy',
    label: 'Tool accuracy A, cold',
    unit: 'µm',
    better: 'less',
    definition:
      'Bidirectional accuracy A of the tool after ISO 230-2: deviation of the means with twice the spread on both sides, everything as cold as the room.',
    of: (candidate) => positioningIn(candidate, 'cold')?.figures.accuracy ?? null,
    resolution: OF_A_TEST,
    speech: {
      weight: 0.6,
      family: 'accuracy',
      verb: 'has',
      noun: 'a cold accuracy band of the tool',
      measure: 'size',
      mattersFrom: ({ values }) => 4 * values.window,
    },
    cause: (candidate, _job, rival) => encoderCause(candidate, rival),
  }),
  figureRow({
    id: 'accuracyWarm',
    group: 'accuracy',
    label: 'Tool accuracy A, warm',
    unit: 'µm',
    better: 'less',
    definition: 'The same, everything as warm as at the end of the day.',
    of: (candidate) => positioningIn(candidate, 'warm')?.figures.accuracy ?? null,
    resolution: OF_A_TEST,
    speech: {
      weight: 1,
      family: 'accuracy',
      verb: 'has',
      noun: 'a warm accuracy band of the tool',
      measure: 'size',
      mattersFrom: ({ values }) => 4 * values.window,
    },
    cause: (candidate, _job, rival) => encoderCause(candidate, rival),
  }),
  figureRow({
    id: 'reversal',
    group: 'accuracy',
    label: 'Reversal error B, worn',
    unit: 'µm',
    better: 'less',
    definition:
      'Largest difference of the mean positions from the two sides after ISO 230-2, worn; warm where there is nothing that wears.',
    of: (candidate) => positioningIn(candidate, 'warm', 'worn')?.figures.reversal ?? null,
    resolution: OF_A_TEST,
    speech: {
      weight: 0.8,
      family: 'reversal',
      verb: 'has',
      noun: 'a reversal error of the tool',
      measure: 'size',
      mattersFrom: ({ values }) => values.window,
    },
    cause: (candidate, _job, rival) => encoderCause(candidate, rival),
  }),
  figureRow({
    id: 'increment',
    group: 'accuracy',
    label: 'Smallest step',
    unit: 'nm',
    better: 'less',
    definition: 'Smallest step that the tool takes for certain, of those tried.',
    of: (candidate) => testOf(candidate, 'increment')?.smallest ?? null,
    absent: 'none of those tried',
    resolution: { absolute: 1e-10, relative: 0.01 },
    speech: {
      weight: 0.7,
      family: 'increment',
      verb: 'has',
      noun: 'a smallest sure step',
      measure: 'size',
      mattersFrom: ({ values }) => values.window / 10,
    },
    cause: (candidate, _job, rival) => encoderCause(candidate, rival),
  }),
  figureRow({
    id: 'stiffness',
    group: 'accuracy',
    label: 'Stiffness against a force',
    unit: 'N/µm',
    better: 'more',
    definition: 'A force that comes at once over the largest deviation of the table that it causes.',
    of: (candidate) => testOf(candidate, 'disturbance')?.stiffness ?? null,
    resolution: { absolute: 1e4, relative: 0.03 },
    speech: {
      weight: 0.6,
      family: 'stiffness',
      verb: 'has',
      noun: 'a stiffness against a sudden force',
      measure: 'height',
    },
  }),
  figureRow({
    id: 'ripple',
    group: 'smoothness',
    label: 'Speed ripple of the scan',
    unit: '%',
    better: 'less',
    definition:
      'Half of peak to peak of the table speed in a scan at constant speed, as a share of that speed.',
    of: (candidate) => testOf(candidate, 'ripple')?.peak ?? null,
    asked: ({ values }) => `at most ${inUnit(values.rippleLimit, '%')}`,
    resolution: { absolute: 1e-5, relative: 0.05 },
    speech: {
      weight: 1,
      family: 'ripple',
      verb: 'has',
      noun: 'a speed ripple',
      measure: 'size',
      mattersFrom: ({ values }) => values.rippleLimit,
    },
    cause: rippleCause,
  }),
];
