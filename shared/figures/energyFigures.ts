import type { EnergyFlow } from '../protocol/accuracy.ts';
import type { FigureOf } from './figure.ts';

interface EnergyFigure extends FigureOf<EnergyFlow> {
  readonly of: (flow: EnergyFlow) => number;
}

/** Energy of one cycle, as warm as at the end of the day, and where it goes, in the order in which a person reads it. */
export const ENERGY_FIGURES = {
  drawn: {
    label: 'Energy drawn per cycle',
    unit: 'J',
    definition:
      'Drawn at the motor terminals while energy flows into the motor. Losses of the amplifier are not included.',
    of: ({ drawn }) => drawn,
  },
  returned: {
    label: 'Energy returned per cycle',
    unit: 'J',
    definition: 'By braking. It is saved only where something else on the bus uses or stores it.',
    of: ({ returned }) => returned,
  },
  net: {
    label: 'Net energy per cycle',
    unit: 'J',
    definition:
      'Drawn at the motor terminals in one cycle less what braking returns to the bus, every part as warm as at the end of the day. Losses of the amplifier are not included.',
    of: ({ drawn, returned }) => drawn - returned,
  },
  netPower: {
    label: 'Net power, mean of the cycle at the end of the day',
    unit: 'W',
    definition: 'The net energy per cycle divided by the cycle time.',
    of: ({ drawn, returned, cycleTime }) => (drawn - returned) / cycleTime,
  },
  copper: {
    label: 'Copper loss per cycle',
    unit: 'J',
    definition: 'Heat of the windings.',
    of: ({ copper }) => copper,
  },
  iron: {
    label: 'Iron loss per cycle',
    unit: 'J',
    definition: 'Eddy currents and hysteresis.',
    of: ({ iron }) => iron,
  },
  guide: {
    label: 'Guide friction loss per cycle',
    unit: 'J',
    definition: 'Friction of the guide.',
    of: ({ guide }) => guide,
  },
  nut: {
    label: 'Nut and bearing friction loss per cycle',
    unit: 'J',
    definition: 'Friction of the nut and of the bearings of the screw.',
    of: ({ nut }) => nut,
  },
  other: {
    label: 'Other losses per cycle',
    unit: 'J',
    definition: 'Damping in link, mounts and buffers.',
    of: ({ other }) => other,
  },
  work: {
    label: 'Work on the process per cycle',
    unit: 'J',
    definition: 'Done against the process force.',
    of: ({ work }) => work,
  },
  stored: {
    label: 'Energy stored at the end of the cycle',
    unit: 'J',
    definition: 'Stored in motion, springs and height, plus the rounding error of the balance.',
    of: ({ stored }) => stored,
  },
} as const satisfies Record<string, EnergyFigure>;

type EnergyFigureName = keyof typeof ENERGY_FIGURES;
export const ENERGY_FIGURE_NAMES = Object.keys(ENERGY_FIGURES) as EnergyFigureName[];
