import { motorConstants, movedMass } from '../axis/motor.ts';
import { inUnit } from '../core/format.ts';
import { currentCause, energyCause, massCause } from './causes.ts';
import { moveRow } from './moveRow.ts';
import { cycleEnergy, yearEnergy } from './read.ts';
import { figureRow } from './row.ts';

export const ENERGY_ROWS = [
  figureRow({
    id: 'energy',
    group: 'energy',
    label: 'Energy of a cycle',
    unit: 'J',
    better: 'less',
    definition:
      'Taken at the motor terminals in one cycle, less what braking gives back to the bus. Losses of the amplifier are not in it.',
    of: cycleEnergy,
    resolution: { absolute: 1e-3, relative: 0.02 },
    speech: { weight: 1, family: 'energy', verb: 'takes', noun: 'energy per cycle', measure: 'size' },
    cause: energyCause,
  }),
  figureRow({
    id: 'cost',
    group: 'energy',
    label: 'Energy cost of a year',
    unit: '',
    better: 'less',
    definition:
      "Mean electrical power of the day, with windings as warm as they get, over the hours and days of a year at the job's price, in your currency.",
    of(candidate, { values }) {
      const energy = yearEnergy(candidate, values);
      return energy === null ? null : energy * values.energyPrice;
    },
    resolution: { absolute: 0.01, relative: 0.02 },
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
    definition: 'Force for the root of the copper loss it takes at 20 °C, all motors together, at the table.',
    of: ({ scene: { parameters: p } }) => motorConstants(p).motorConstant * Math.sqrt(p.motorCount),
    text: (value) => inUnit(value, 'N/√W'),
    resolution: { absolute: 0, relative: 0.02 },
  }),
  figureRow({
    id: 'movedMass',
    group: 'energy',
    label: 'Moved mass',
    unit: 'kg',
    better: 'less',
    definition:
      'Payload, table and coil unit; with a screw also the inertia of what rotates, as felt at the table.',
    of: ({ scene }) => movedMass(scene.parameters),
    resolution: { absolute: 0, relative: 0.02 },
    speech: { weight: 0.3, family: 'mass', verb: 'moves', noun: 'mass', measure: 'size' },
    cause: massCause,
  }),
];
