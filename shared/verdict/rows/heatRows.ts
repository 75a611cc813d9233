import { inUnit, ranged } from '../../core/format.ts';
import { qualified } from '../../figures/figure.ts';
import { HEAT_FIGURES } from '../../figures/heatFigures.ts';
import { durationText } from '../../figures/timeLapseText.ts';
import { driftCause, growthCause, windingCause } from '../causes.ts';
import { dayEnd, dayOf, largest, longRun } from '../read.ts';
import { figureRow } from './row.ts';

const { windingPeak, growth } = HEAT_FIGURES;

export const HEAT_ROWS = [
  figureRow({
    ...qualified(windingPeak, 'at the end of the day'),
    id: 'winding',
    group: 'heat',
    name: 'winding temperature at the end of the day',
    better: 'less',
    definition: 'Hottest winding during the last cycle of the day.',
    of: (candidate) => dayEnd(candidate)?.windingPeak ?? null,
    absent: 'trips',
    asked: ({ values }) => `never folded back in ${durationText(values.dailyTime)}`,
    resolution: { absolute: 1, relative: 0 },
    speech: {
      weight: 0.8,
      family: 'winding',
      verb: 'has',
      noun: 'a winding at the end of the day',
      measure: 'warmth',
      mattersFrom: () => 20,
    },
    cause: (candidate, _job, rival) => windingCause(candidate, rival),
  }),
  figureRow({
    ...qualified(windingPeak, 'steady state'),
    id: 'windingSteady',
    group: 'heat',
    better: 'less',
    definition: 'Hottest winding during a cycle in thermal steady state.',
    of: (candidate) => longRun(candidate)?.windingPeak ?? null,
    absent: 'no steady state',
    resolution: { absolute: 1, relative: 0 },
  }),
  figureRow({
    id: 'drift',
    group: 'heat',
    label: 'Loss of force per ampere, at the end of the day',
    name: 'loss of force per ampere over the day',
    unit: '%',
    better: 'less',
    definition: 'Loss of force per ampere because the magnets are warm, compared with room temperature.',
    of(candidate) {
      const end = dayEnd(candidate);
      return end && Math.max(1 - end.forcePerAmp, 0);
    },
    resolution: { absolute: 5e-4, relative: 0.05 },
    speech: {
      weight: 0.4,
      family: 'drift',
      verb: 'has',
      noun: 'a loss of force per ampere over the day',
      measure: 'size',
      mattersFrom: () => 0.02,
    },
    cause: driftCause,
  }),
  figureRow({
    ...qualified(growth, 'largest of the day'),
    id: 'growth',
    group: 'heat',
    name: 'thermal growth at the tool',
    better: 'less',
    definition: `${growth.definition} The largest magnitude of the day.`,
    of: (candidate) => largest(dayOf(candidate), growth.of),
    absent: 'trips',
    asked: ({ values }) => (values.growthLimit > 0 ? `at most ${ranged(values.growthLimit, 'µm')}` : null),
    limit: ({ values }) => values.growthLimit || null,
    resolution: { absolute: 5e-8, relative: 0.05 },
    speech: {
      weight: 1,
      family: 'growth',
      verb: 'has',
      noun: 'a thermal growth at the tool',
      measure: 'size',
      mattersFrom: ({ values }) => values.growthLimit || Number.POSITIVE_INFINITY,
    },
    cause: growthCause,
  }),
  figureRow({
    id: 'coolant',
    group: 'heat',
    label: 'Heat to be removed by a coolant, steady state',
    unit: 'W',
    better: 'less',
    definition:
      'Heat that a coolant has to remove so that winding temperature and thermal growth stay within their limits; none where room air is enough.',
    of({ outcome }) {
      const { cooling } = outcome.heat;
      return cooling && cooling.outOfReach.length === 0 ? cooling.heat : null;
    },
    text: (value) => (value === null ? 'no coolant helps' : value === 0 ? 'none' : inUnit(value, 'W')),
    resolution: { absolute: 1, relative: 0.05 },
  }),
];
