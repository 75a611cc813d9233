import { decibels } from '../core/decibels.ts';
import { inUnit, ranged } from '../core/format.ts';
import type { Unit } from '../core/units.ts';
import type { AtFrequency, LoopFigures } from '../protocol/analysis.ts';

/** What a figure of the loop is called, how it is found and read. */
export interface LoopFigure {
  readonly label: string;
  readonly unit: Unit;
  readonly definition: string;
  readonly better: 'less' | 'more' | 'neither';
  /** What is shown where a loop has no such figure. */
  readonly absent: string;
  /** No figure can mean that nothing limits the loop, or that it does not apply. */
  readonly absentIs: 'best' | 'nothing';
  /** The figure, with the frequency where it was found as far as it has one; null where the loop has none. */
  of(figures: LoopFigures): { readonly value: number; readonly frequency?: number } | null;
  /** A ratio that is also read in decibels. */
  readonly decibels?: true;
}

const some = (value: number | null): { readonly value: number } | null => (value === null ? null : { value });
const none = { absent: '—', absentIs: 'nothing' } as const;
const unlimited = { absent: 'unlimited', absentIs: 'best' } as const;

/** In the order a person reads them; L is the loop cut at the current command, S = 1/(1 + L), T = L/(1 + L). */
export const LOOP_FIGURES = {
  crossover: {
    label: 'Crossover',
    unit: 'Hz',
    definition:
      'Where |L| falls through 1. Of several such frequencies, the one nearest to where the controller leads: others belong to a resonance, or to an integrator against a stiff guide.',
    better: 'neither',
    ...none,
    of: ({ crossover }) => some(crossover),
  },
  phaseMargin: {
    label: 'Phase margin',
    unit: '°',
    definition: 'Smallest distance of the phase of L from −180° where |L| = 1.',
    better: 'more',
    ...none,
    of: ({ phaseMargin }) => phaseMargin,
  },
  gainMargin: {
    label: 'Gain margin',
    unit: '',
    definition: 'Smallest factor above 1 on all gains that makes L meet −1.',
    better: 'more',
    ...unlimited,
    of: ({ gainMargin }) => gainMargin,
    decibels: true,
  },
  gainReduction: {
    label: 'Gain reduction margin',
    unit: '',
    definition: 'Largest factor below 1 on all gains that makes L meet −1.',
    better: 'less',
    ...unlimited,
    of: ({ gainReduction }) => gainReduction,
    decibels: true,
  },
  delayMargin: {
    label: 'Delay margin',
    unit: 'ms',
    definition: 'Smallest additional delay in the loop that makes L meet −1.',
    better: 'more',
    ...none,
    of: ({ delayMargin }) => delayMargin,
  },
  modulusMargin: {
    label: 'Modulus margin',
    unit: '',
    definition:
      'Smallest distance of L from −1. Its inverse is the peak of |S|. 0.5 or more is common practice.',
    better: 'more',
    ...none,
    of: ({ modulusMargin }) => modulusMargin,
  },
  closedLoopPeak: {
    label: 'Closed-loop peak',
    unit: '',
    definition: 'Peak of |T| over all frequencies.',
    better: 'less',
    ...none,
    of: ({ closedLoopPeak }) => closedLoopPeak,
    decibels: true,
  },
  bandwidth: {
    label: 'Bandwidth',
    unit: 'Hz',
    definition:
      'Lowest frequency where |T| falls below 1/√2. Far below the crossover where the guide holds the table like a spring: only the integrator moves it then.',
    better: 'more',
    ...none,
    of: ({ bandwidth }) => some(bandwidth),
  },
  staticStiffness: {
    label: 'Stiffness at standstill',
    unit: 'N/µm',
    definition: 'Static force on the table over its deflection. Unlimited with an integrator.',
    better: 'more',
    ...unlimited,
    of: ({ staticStiffness }) => some(Number.isFinite(staticStiffness) ? staticStiffness : null),
  },
  minimumStiffness: {
    label: 'Least stiffness',
    unit: 'N/µm',
    definition: 'Smallest ratio of force on the table to its deflection, over all frequencies.',
    better: 'more',
    ...none,
    of: ({ minimumStiffness }) => minimumStiffness,
  },
  holdingCurrent: {
    label: 'Holding current',
    unit: 'A',
    definition: 'Current amplitude that holds the operating point.',
    better: 'less',
    ...none,
    of: ({ holdingCurrent }) => some(holdingCurrent),
  },
  holdingVoltage: {
    label: 'Holding voltage',
    unit: 'V',
    definition: 'Voltage amplitude that holds the operating point.',
    better: 'less',
    ...none,
    of: ({ holdingVoltage }) => some(holdingVoltage),
  },
} as const satisfies Record<string, LoopFigure>;

export type LoopFigureName = keyof typeof LOOP_FIGURES;

export const LOOP_FIGURE_NAMES = Object.keys(LOOP_FIGURES) as LoopFigureName[];

/** Its value alone, as a table shows it: '41.7°', '8.00 dB', or why there is none. */
export function loopValueText(name: LoopFigureName, figures: LoopFigures): string {
  const figure: LoopFigure = LOOP_FIGURES[name];
  const found = figure.of(figures);
  if (found === null) return figure.absent;
  return figure.decibels ? `${inUnit(decibels(found.value), '', 3)} dB` : ranged(found.value, figure.unit);
}

/** A figure as it is read: '41.7° at 54.2 Hz', '2.51 (8.00 dB) at 212 Hz', or why there is none. */
export function loopFigureText(name: LoopFigureName, figures: LoopFigures): string {
  const figure: LoopFigure = LOOP_FIGURES[name];
  const found = figure.of(figures);
  if (found === null) return figure.absent;
  const number = ranged(found.value, figure.unit);
  const inDecibels = figure.decibels ? ` (${loopValueText(name, figures)})` : '';
  return `${number}${inDecibels}${placeText(found)}`;
}

function placeText({ frequency }: Partial<AtFrequency>): string {
  return frequency === undefined ? '' : ` at ${ranged(frequency, 'Hz')}`;
}
