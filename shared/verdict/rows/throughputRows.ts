import { inUnit, ranged } from '../../core/format.ts';
import { crossoverCause } from '../causes.ts';
import { dayOf, longestMotion, movesOf, shortestDwell } from '../read.ts';
import { moveRow } from './moveRow.ts';
import { figureRow } from './row.ts';

const yesOrNo = (yes: string, no: string) => (value: number | null) => (value === 1 ? yes : no);
const NOTHING_TELLS = { absolute: 0, relative: 0 };

export const THROUGHPUT_ROWS = [
  figureRow({
    id: 'sizing',
    group: 'throughput',
    label: 'Sizing by calculation',
    unit: '',
    better: 'more',
    definition: 'Whether every calculated figure is within its limit: force, speed, voltage, heat.',
    of: ({ sizing }) => (sizing.passes ? 1 : 0),
    text: yesOrNo('passes', 'does not pass'),
    asked: () => 'passes',
    resolution: NOTHING_TELLS,
    ranked: false,
  }),
  figureRow({
    id: 'moves',
    group: 'throughput',
    label: 'Moves without a trip',
    unit: '',
    better: 'more',
    definition: 'Whether the simulated drive made all moves of the job without tripping.',
    of: ({ outcome }) => (outcome.moves.trip === null ? 1 : 0),
    text: yesOrNo('yes', 'trips'),
    asked: () => 'yes',
    resolution: NOTHING_TELLS,
    ranked: false,
  }),
  figureRow({
    id: 'inPlace',
    group: 'throughput',
    label: 'In position after',
    unit: 's',
    better: 'less',
    definition: 'Longest commanded motion of the job and the longest settling into the window after one.',
    of(candidate, job) {
      const [motion, settling] = [longestMotion(candidate, job), movesOf(candidate)?.settlingTime ?? null];
      return motion === null || settling === null ? null : motion + settling;
    },
    absent: 'not in position',
    resolution: { absolute: 1e-4, relative: 0.01 },
  }),
  moveRow('settlingTime', {
    id: 'settling',
    group: 'throughput',
    asked: (job) => (shortestDwell(job) > 0 ? `within the dwell, ${ranged(shortestDwell(job), 's')}` : null),
    resolution: { absolute: 2e-4, relative: 0.03 },
    speech: {
      weight: 1,
      family: 'settling',
      verb: 'has',
      noun: 'a settling time',
      measure: 'length',
      mattersFrom: (job) => shortestDwell(job) / 4,
    },
    cause: (candidate, _job, rival) => crossoverCause(candidate, rival),
  }),
  figureRow({
    id: 'utilisation',
    group: 'throughput',
    label: 'Continuous force used',
    unit: '%',
    better: 'less',
    definition:
      'RMS force of the duty over the continuous force of all motors together. The rest is reserve.',
    // A drive that stops itself has no duty, however little it used before.
    of: (candidate) => {
      const { rmsForce, continuousForce } = candidate.outcome.heat.duty;
      return movesOf(candidate) && dayOf(candidate) ? rmsForce / continuousForce : null;
    },
    asked: () => `at most ${inUnit(1, '%')}`,
    resolution: { absolute: 0.005, relative: 0.03 },
    speech: {
      weight: 0.4,
      family: 'force',
      verb: 'has',
      noun: 'a share of its continuous force used',
      measure: 'size',
      mattersFrom: () => 0.5,
    },
  }),
  moveRow('voltageHeadroom', {
    id: 'voltageHeadroom',
    group: 'throughput',
    resolution: { absolute: 0.01, relative: 0.03 },
    speech: { weight: 0.2, family: 'voltage', verb: 'has', noun: 'a voltage headroom', measure: 'size' },
  }),
];
