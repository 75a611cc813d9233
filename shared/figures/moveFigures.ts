import type { Quantity } from '../core/channels.ts';
import { ranged } from '../core/format.ts';
import type { Unit } from '../core/units.ts';
import type { MoveFigures } from '../protocol/axis.ts';

export type MoveFigureName = Exclude<keyof MoveFigures, 'index'>;

/** What a figure of a move is called, how it is measured and read. Page, report, command line and documents quote it. */
export interface MoveFigure {
  readonly label: string;
  /** Its family of units; shares are shown in %. */
  readonly unit: Unit;
  readonly quantity: Quantity;
  readonly definition: string;
  readonly better: 'less' | 'more' | 'neither';
  /** What it can be told apart by: one position-loop period, one encoder count, or the digits shown. */
  readonly resolution: 'period' | 'count' | 'digits';
  /** What is shown where a move has no such figure. */
  readonly absent: string;
  /** No figure can mean that the move failed to have it, or that it does not apply. */
  readonly absentIs: 'worst' | 'nothing';
}

const NO_FIGURE = { absent: '—', absentIs: 'nothing' } as const;

/** In the order a person reads them. Between the instants named, every sample counts; nothing is filtered. */
export const MOVE_FIGURES: Readonly<Record<MoveFigureName, MoveFigure>> = {
  duration: {
    label: 'Duration',
    unit: 's',
    quantity: 'setpoint',
    definition:
      'From the start of a commanded motion to the start of the next, so that its dwell belongs to it. An oscillation is measured cycle by cycle.',
    better: 'neither',
    resolution: 'period',
    ...NO_FIGURE,
  },
  riseTime: {
    label: 'Rise time',
    unit: 'ms',
    quantity: 'position',
    definition:
      'Of an unprofiled step: from the first time the encoder reading has gone 10 % of the step to the first time it has gone 90 %, interpolated between position-loop samples. None for a profiled move, and where 90 % is not reached.',
    better: 'less',
    resolution: 'period',
    ...NO_FIGURE,
  },
  settlingTime: {
    label: 'Settling time',
    unit: 'ms',
    quantity: 'error',
    definition:
      'From the end of the programmed motion to the last position-loop sample at which the encoder reading was off the target by more than the window, plus or minus. Time that the shaping of the command takes counts. 0 where it was never outside.',
    better: 'less',
    resolution: 'period',
    absent: 'not settled',
    absentIs: 'worst',
  },
  overshoot: {
    label: 'Overshoot',
    unit: 'µm',
    quantity: 'error',
    definition:
      'Largest distance of the encoder reading beyond the target in the direction of motion, after the commanded end. 0 where it stays short of the target. None without a standstill.',
    better: 'less',
    resolution: 'count',
    ...NO_FIGURE,
  },
  peakError: {
    label: 'Following error, peak',
    unit: 'µm',
    quantity: 'error',
    definition: 'Largest magnitude of setpoint minus encoder reading at a position-loop sample.',
    better: 'less',
    resolution: 'count',
    ...NO_FIGURE,
  },
  rmsError: {
    label: 'Following error, RMS',
    unit: 'µm',
    quantity: 'error',
    definition:
      'Root of the mean square of setpoint minus encoder reading over all position-loop samples, dwell included.',
    better: 'less',
    resolution: 'digits',
    ...NO_FIGURE,
  },
  velocityRipplePeak: {
    label: 'Velocity ripple, peak to peak',
    unit: '%',
    quantity: 'speed',
    definition:
      'While the set speed is constant, the first tenth of that part left out as run-in: largest minus smallest table speed, as a share of the set speed. None without such a part.',
    better: 'less',
    resolution: 'digits',
    ...NO_FIGURE,
  },
  velocityRippleRms: {
    label: 'Velocity ripple, RMS',
    unit: '%',
    quantity: 'speed',
    definition:
      'While the set speed is constant, the first tenth of that part left out as run-in: root of the mean square of table speed minus set speed, as a share of the set speed. None without such a part.',
    better: 'less',
    resolution: 'digits',
    ...NO_FIGURE,
  },
  peakForce: {
    label: 'Force, peak',
    unit: 'N',
    quantity: 'force',
    definition: 'Largest magnitude of the force of all motors together, over all current-loop periods.',
    better: 'less',
    resolution: 'digits',
    ...NO_FIGURE,
  },
  rmsForce: {
    label: 'Force, RMS',
    unit: 'N',
    quantity: 'force',
    definition:
      'Root of the mean square of the force of all motors together over all current-loop periods, dwell included.',
    better: 'less',
    resolution: 'digits',
    ...NO_FIGURE,
  },
  peakCurrent: {
    label: 'Current, peak',
    unit: 'A',
    quantity: 'current',
    definition:
      'Largest current amplitude √(i_d² + i_q²) of all motors together, over all current-loop periods.',
    better: 'less',
    resolution: 'digits',
    ...NO_FIGURE,
  },
  rmsCurrent: {
    label: 'Current, RMS over time',
    unit: 'A',
    quantity: 'current',
    definition:
      'Root of the mean square of the current amplitude over all current-loop periods, dwell included: the steady current that heats the winding as much.',
    better: 'less',
    resolution: 'digits',
    ...NO_FIGURE,
  },
  currentHeadroom: {
    label: 'Current headroom',
    unit: '%',
    quantity: 'current',
    definition:
      '1 minus the largest commanded current as a share of the current limit at that moment. 0 where the limit was reached.',
    better: 'more',
    resolution: 'digits',
    ...NO_FIGURE,
  },
  voltageHeadroom: {
    label: 'Voltage headroom',
    unit: '%',
    quantity: 'voltage',
    definition:
      '1 minus the largest voltage amplitude as a share of V_dc/√3, the limit of the bus. 0 where the limit was reached.',
    better: 'more',
    resolution: 'digits',
    ...NO_FIGURE,
  },
  copperLoss: {
    label: 'Copper loss, mean',
    unit: 'W',
    quantity: 'heat',
    definition: 'Copper loss of all motors over the move, divided by its duration.',
    better: 'less',
    resolution: 'digits',
    ...NO_FIGURE,
  },
};

export const MOVE_FIGURE_NAMES = Object.keys(MOVE_FIGURES) as MoveFigureName[];

/** A figure as it is read: '7.84 µm', or why there is none. */
export function moveFigureText(name: MoveFigureName, value: number | null): string {
  const { unit, absent } = MOVE_FIGURES[name];
  if (value === null) return absent;
  return name === 'settlingTime' && value === 0 ? 'at once' : ranged(value, unit);
}

/** The worst of a figure over several moves; null without any, and where one of them failed to have it. */
export function worstFigure(moves: readonly MoveFigures[], name: MoveFigureName): number | null {
  return worstOf(
    name,
    moves.map((move) => move[name]),
  );
}

/** The same of its values alone, for whoever measures nothing else of the moves. */
export function worstOf(name: MoveFigureName, values: readonly (number | null)[]): number | null {
  const { better, absentIs } = MOVE_FIGURES[name];
  const measured = values.filter((value) => value !== null);
  if (measured.length === 0 || (absentIs === 'worst' && measured.length < values.length)) return null;
  return better === 'more' ? Math.min(...measured) : Math.max(...measured);
}
