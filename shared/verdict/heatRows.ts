import { inUnit, ranged } from '../core/format.ts';
import { durationText } from '../figures/timeLapseText.ts';
import { driftCause, growthCause, windingCause } from './causes.ts';
import { dayEnd, dayOf, largest, longRun } from './read.ts';
import { figureRow } from './row.ts';

export const HEAT_ROWS = [
  figureRow({
    id: 'winding',
    group: 'heat',
    label: "Winding at the day's end",
    unit: '°C',
    better: 'less',
    definition: 'Hottest winding of the last cycle of the day.',
    of: (candidate) => dayEnd(candidate)?.windingPeak ?? null,
    absent: 'trips',
    asked: ({ values }) => `never folded back in ${durationText(values.dailyTime)}`,
    resolution: { absolute: 1, relative: 0 },
    speech: {
      weight: 0.8,
      family: 'winding',
      verb: 'has',
      noun: "a winding at the day's end",
      measure: 'warmth',
      mattersFrom: () => 20,
    },
    cause: (candidate, _job, rival) => windingCause(candidate, rival),
  }),
  figureRow({
    id: 'windingSteady',
    group: 'heat',
    label: 'Winding in the long run',
    unit: '°C',
    better: 'less',
    definition: 'Hottest winding of a cycle when the duty goes on until nothing warms any more.',
    of: (candidate) => longRun(candidate)?.windingPeak ?? null,
    absent: 'no end to it',
    resolution: { absolute: 1, relative: 0 },
  }),
  figureRow({
    id: 'drift',
    group: 'heat',
    label: 'Loss of force per ampere',
    unit: '%',
    better: 'less',
    definition:
      "What the day's heat takes from the force per ampere, against everything as cold as the room.",
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
    id: 'growth',
    group: 'heat',
    label: 'Growth at the tool',
    unit: 'µm',
    better: 'less',
    definition: 'Farthest that heat moves the tool in the day, at the end of the stroke where that is most.',
    of: (candidate) => largest(dayOf(candidate), ({ growth }) => growth),
    absent: 'trips',
    asked: ({ values }) => `at most ${ranged(values.growthLimit, 'µm')}`,
    limit: ({ values }) => values.growthLimit,
    resolution: { absolute: 5e-8, relative: 0.05 },
    speech: {
      weight: 1,
      family: 'growth',
      verb: 'has',
      noun: 'a growth at the tool',
      measure: 'size',
      mattersFrom: ({ values }) => values.growthLimit,
    },
    cause: growthCause,
  }),
  figureRow({
    id: 'coolant',
    group: 'heat',
    label: 'Heat a coolant has to take',
    unit: 'W',
    better: 'less',
    definition:
      'To be carried away in the long run so that winding and growth keep what is asked of them; 0 W where the air of the room is enough.',
    of({ outcome }) {
      const { cooling } = outcome.heat;
      return cooling && cooling.outOfReach.length === 0 ? cooling.heat : null;
    },
    absent: 'no coolant helps',
    text: (value) => (value === 0 ? 'none' : inUnit(value, 'W')),
    resolution: { absolute: 1, relative: 0.05 },
  }),
];
