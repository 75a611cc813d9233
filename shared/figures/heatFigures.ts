import type { HeatState } from '../protocol/timeLapse.ts';
import type { FigureOf } from './figure.ts';

/** A figure of an axis at one moment of its duty. */
export interface HeatFigure extends FigureOf<HeatState> {
  /** Head of a narrow column. */
  readonly head: string;
  readonly of: (state: HeatState) => number;
  /** Only an axis with a screw has it. */
  readonly ofScrew?: true;
}

const OF_THE_CYCLE = 'mean of the cycle';

/** Everything that is told of an axis as warm as it is, in the order in which a person reads it. */
export const HEAT_FIGURES = {
  winding: {
    label: 'Winding temperature',
    head: 'Winding',
    unit: '°C',
    definition: 'At the start of the cycle that is run at this time.',
    of: ({ winding }) => winding,
  },
  windingPeak: {
    label: 'Winding temperature, peak',
    head: 'Winding peak',
    unit: '°C',
    definition: 'Hottest winding during the cycle that is run at this time.',
    of: ({ windingPeak }) => windingPeak,
  },
  carrier: {
    label: 'Coil carrier or motor housing temperature',
    head: 'Carrier',
    unit: '°C',
    definition: 'Of the part that holds the winding; it passes its heat to air, coolant and table.',
    of: ({ carrier }) => carrier,
  },
  table: {
    label: 'Table temperature',
    head: 'Table',
    unit: '°C',
    definition: 'The table is warmed by the carrier and the guide.',
    of: ({ table }) => table,
  },
  screw: {
    label: 'Screw temperature',
    head: 'Screw',
    unit: '°C',
    definition: 'The screw is warmed by nut and bearings; coolant at the motor does not reach them.',
    of: ({ screw }) => screw,
    ofScrew: true,
  },
  growth: {
    label: 'Thermal growth at the tool',
    head: 'Growth',
    unit: 'µm',
    definition:
      'Displacement of the tool from its cold position at the same setpoint, at the end of the stroke where that is larger. ' +
      'A scale follows the growth of what it is fixed to; an encoder on the motor does not see the growth of the screw.',
    of: ({ growth }) => growth,
  },
  forcePerAmp: {
    label: 'Force per ampere, change from cold',
    head: 'Force per A',
    unit: '%',
    digits: 2,
    definition:
      'Compared with room temperature. Warm magnets have less flux, so the same force needs more current.',
    of: ({ forcePerAmp }) => forcePerAmp - 1,
  },
  electricPower: {
    label: `Electrical power, ${OF_THE_CYCLE}`,
    head: 'Power',
    unit: 'W',
    definition: 'Drawn at the motor terminals, less what is returned.',
    of: ({ electricPower }) => electricPower,
  },
  copper: {
    label: `Copper loss, ${OF_THE_CYCLE}`,
    head: 'Copper',
    unit: 'W',
    definition: 'Heat of the windings. Warm copper has more resistance: 0.39 % per kelvin.',
    of: ({ copper }) => copper,
  },
  iron: {
    label: `Iron loss, ${OF_THE_CYCLE}`,
    head: 'Iron',
    unit: 'W',
    definition: 'Eddy currents and hysteresis.',
    of: ({ iron }) => iron,
  },
  guide: {
    label: `Guide friction loss, ${OF_THE_CYCLE}`,
    head: 'Guide',
    unit: 'W',
    definition: 'Half of it warms the table.',
    of: ({ guide }) => guide,
  },
  nut: {
    label: `Nut and bearing friction loss, ${OF_THE_CYCLE}`,
    head: 'Nut',
    unit: 'W',
    definition: 'It warms the screw.',
    of: ({ nut }) => nut,
    ofScrew: true,
  },
  sinkHeat: {
    label: `Heat given off by the carrier, ${OF_THE_CYCLE}`,
    head: 'Given off',
    unit: 'W',
    definition: 'To room air or to the coolant.',
    of: ({ sinkHeat }) => sinkHeat,
  },
} as const satisfies Record<keyof HeatState, HeatFigure>;

export type HeatFigureName = keyof typeof HEAT_FIGURES;

export const HEAT_FIGURE_NAMES = Object.keys(HEAT_FIGURES) as HeatFigureName[];
