import { inUnit, ranged, shortest } from '../../core/format.ts';
import { qualified } from '../../figures/figure.ts';
import {
  DISTURBANCE_FIGURES,
  INCREMENT_FIGURES,
  POSITIONING_FIGURES,
  RIPPLE_FIGURES,
} from '../../figures/testFigures.ts';
import { encoderCause, rippleCause, scaleCause } from '../causes.ts';
import { positioningIn, testFigure } from '../read.ts';
import { moveRow } from './moveRow.ts';
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
    ...qualified(POSITIONING_FIGURES.accuracy, 'cold'),
    id: 'accuracyCold',
    group: 'accuracy',
    better: 'less',
    definition: `${POSITIONING_FIGURES.accuracy.definition} After ISO 230-2, at the tool, everything at room temperature.`,
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
    cause: (candidate, _job, rival) => scaleCause(candidate, rival),
  }),
  figureRow({
    ...qualified(POSITIONING_FIGURES.accuracy, 'warm'),
    id: 'accuracyWarm',
    group: 'accuracy',
    better: 'less',
    definition: 'The same, with every part as warm as at the end of the day.',
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
    cause: (candidate, _job, rival) => scaleCause(candidate, rival),
  }),
  figureRow({
    ...qualified(POSITIONING_FIGURES.reversal, 'worn'),
    id: 'reversal',
    group: 'accuracy',
    better: 'less',
    definition: `${POSITIONING_FIGURES.reversal.definition} After ISO 230-2, worn; warm where there is nothing that wears.`,
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
    id: 'shortRange',
    group: 'accuracy',
    label: 'Error that the encoder does not see, over a short distance, ±',
    name: 'error unseen by the encoder',
    unit: 'µm',
    better: 'less',
    definition:
      'Interpolation error of the scale within its signal period; with an encoder on the motor also the lead error of the screw within a revolution. The loop follows it: the tool is off by as much although the drive has settled.',
    of: ({ scene: { parameters: p } }) =>
      p.interpolation1 + p.interpolation2 + (p.encoderSide === 'motor' ? p.leadError : 0),
    asked: ({ values }) => `at most the window, ±${ranged(values.window, 'm')}`,
    limit: ({ values }) => values.window,
    resolution: { absolute: 1e-10, relative: 0.05 },
  }),
  figureRow({
    ...testFigure('increment', INCREMENT_FIGURES.smallest),
    id: 'increment',
    group: 'accuracy',
    better: 'less',
    asked: ({ values }) => (values.smallestStep > 0 ? `at most ${ranged(values.smallestStep, 'm')}` : null),
    limit: ({ values }) => values.smallestStep || null,
    resolution: { absolute: 1e-10, relative: 0.01 },
    speech: {
      weight: 0.7,
      family: 'increment',
      verb: 'has',
      noun: 'a minimum incremental motion',
      measure: 'size',
      mattersFrom: ({ values }) => values.window / 10,
    },
    cause: (candidate, _job, rival) => encoderCause(candidate, rival),
  }),
  figureRow({
    ...testFigure('disturbance', DISTURBANCE_FIGURES.stiffness),
    id: 'stiffness',
    group: 'accuracy',
    better: 'more',
    resolution: { absolute: 1e4, relative: 0.03 },
    speech: {
      weight: 0.6,
      family: 'stiffness',
      verb: 'has',
      noun: 'a stiffness against a force step',
      measure: 'height',
    },
  }),
  figureRow({
    ...testFigure('ripple', RIPPLE_FIGURES.peak),
    id: 'ripple',
    group: 'smoothness',
    name: 'speed ripple of the scan',
    better: 'less',
    asked: ({ values }) =>
      values.rippleLimit > 0
        ? `at most ${inUnit(values.rippleLimit, '%')} up to ${shortest(values.rippleBandwidth, 'Hz')}`
        : null,
    resolution: { absolute: 1e-5, relative: 0.05 },
    speech: {
      weight: 1,
      family: 'ripple',
      verb: 'has',
      noun: 'a speed ripple',
      measure: 'size',
      mattersFrom: ({ values }) => values.rippleLimit || Number.POSITIVE_INFINITY,
    },
    cause: rippleCause,
  }),
  figureRow({
    ...testFigure('ripple', RIPPLE_FIGURES.unfilteredPeak),
    id: 'rippleUnfiltered',
    group: 'smoothness',
    better: 'less',
    resolution: { absolute: 1e-5, relative: 0.05 },
  }),
];
