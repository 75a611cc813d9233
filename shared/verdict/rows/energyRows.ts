import { motorConstants } from '../../axis/motor.ts';
import { movedMass } from '../../core/movedMass.ts';
import { ENERGY_FIGURES } from '../../figures/energyFigures.ts';
import { currentCause, energyCause, massCause } from '../causes.ts';
import { testFigure } from '../read.ts';
import { moveRow } from './moveRow.ts';
import { figureRow } from './row.ts';

export const ENERGY_ROWS = [
  figureRow({
    ...testFigure('energy', ENERGY_FIGURES.net),
    id: 'energy',
    group: 'energy',
    better: 'less',
    resolution: { absolute: 1e-3, relative: 0.02 },
    speech: { weight: 1, family: 'energy', verb: 'takes', noun: 'energy per cycle', measure: 'size' },
    cause: energyCause,
  }),
  moveRow('rmsCurrent', {
    id: 'rmsCurrent',
    group: 'energy',
    resolution: { absolute: 0.005, relative: 0.02 },
    speech: { weight: 0.7, family: 'current', verb: 'draws', noun: 'RMS current', measure: 'size' },
    cause: (candidate, _job, rival) => currentCause(candidate, rival),
  }),
  moveRow('peakCurrent', {
    id: 'peakCurrent',
    group: 'energy',
    resolution: { absolute: 0.01, relative: 0.02 },
  }),
  figureRow({
    id: 'motorConstant',
    group: 'energy',
    label: 'Motor constant',
    unit: 'N/√W',
    better: 'more',
    definition:
      'Force divided by the square root of its copper loss at 20 °C, all motors together, at the table.',
    of: ({ scene: { parameters: p } }) => motorConstants(p).motorConstant * Math.sqrt(p.motorCount),
    resolution: { absolute: 0, relative: 0.02 },
  }),
  figureRow({
    id: 'movedMass',
    group: 'energy',
    label: 'Moved mass',
    unit: 'kg',
    better: 'less',
    definition:
      'Payload, table and coil unit; with a screw also the rotating inertia, referred to the table.',
    of: ({ scene }) => movedMass(scene.parameters),
    resolution: { absolute: 0, relative: 0.02 },
    speech: { weight: 0.3, family: 'mass', verb: 'moves', noun: 'mass', measure: 'size' },
    cause: massCause,
  }),
];
