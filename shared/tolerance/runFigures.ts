import { type Figure, figureText } from '../figures/figure.ts';
import { MOVE_FIGURES } from '../figures/moveFigures.ts';
import type { Trip } from '../protocol/axis.ts';

/** What one machine came to, over one cycle. SI; all figures are null where the drive tripped. */
export interface MachineResult {
  readonly trip: Trip['kind'] | null;
  /** Whether its energy account balances: if not, its figures are not to be trusted. */
  readonly holds: boolean;
  readonly figures: Readonly<Record<RunFigureName, number | null>>;
}

/** The same of one of the machines of a study. */
export interface RunResult extends MachineResult {
  /** Counted from 1. */
  readonly run: number;
}

export type RunFigureName = 'settlingTime' | 'peakError' | 'rmsError' | 'peakCurrent' | 'windingTemperature';

const { settlingTime, peakError, rmsError, peakCurrent } = MOVE_FIGURES;

/** Of all of them less is better; where there is none, the machine failed to have it. */
export const RUN_FIGURES: Readonly<Record<RunFigureName, Figure>> = {
  settlingTime: { ...settlingTime, definition: `Longest of the cycle. ${settlingTime.definition}` },
  peakError: { ...peakError, definition: `Over the cycle. ${peakError.definition}` },
  rmsError: {
    ...rmsError,
    definition:
      'Over the cycle. Root of the mean square of setpoint minus encoder reading over all position-loop samples.',
  },
  peakCurrent: { ...peakCurrent, definition: `Over the cycle. ${peakCurrent.definition}` },
  windingTemperature: {
    label: 'Winding temperature, steady',
    unit: '°C',
    definition:
      'Where the winding ends when this cycle is repeated for hours, from its mean losses. None where losses outgrow the heat flow.',
    absent: 'no balance',
  },
};

export const RUN_FIGURE_NAMES = Object.keys(RUN_FIGURES) as RunFigureName[];

export function runFigureText(name: RunFigureName, value: number | null): string {
  if (name === 'settlingTime' && value === 0) return 'at once';
  return figureText(RUN_FIGURES[name], value);
}

/** What a good machine keeps. */
export type Limits = Readonly<Partial<Record<RunFigureName, number>>>;

/** Whether the machine does not trip, and keeps all limits. */
export function isGood({ trip, holds, figures }: RunResult, limits: Limits): boolean {
  if (trip !== null || !holds) return false;
  return RUN_FIGURE_NAMES.every((name) => {
    const limit = limits[name];
    const value = figures[name];
    return limit === undefined || (value !== null && value <= limit);
  });
}

/** How far a machine is from being good, for ordering: the larger the worse. Trips are worst, then figures it failed to have. */
export function badness({ trip, figures }: RunResult, limits: Limits): number {
  if (trip !== null) return Infinity;
  const limited = RUN_FIGURE_NAMES.filter((name) => limits[name] !== undefined);
  const measures = limited.map((name) => {
    const value = figures[name];
    return value === null ? Number.MAX_VALUE : value / (limits[name] || 1);
  });
  return measures.length > 0 ? Math.max(...measures) : (figures.peakError ?? Number.MAX_VALUE);
}
