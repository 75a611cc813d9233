import { ranged } from '../core/format.ts';
import type { Unit } from '../core/units.ts';

/**
 * What a figure is called, what it means and how it is read. One label stands for one quantity: page, report, verdict and
 * command line take it from here.
 */
export interface Figure {
  readonly label: string;
  /** Its family of units; shares are shown in %. */
  readonly unit: Unit;
  readonly definition: string;
  /** Significant digits; 3 unless stated. */
  readonly digits?: number;
  /** Said where there is no such figure; a dash unless stated. */
  readonly absent?: string;
}

/** A figure that is read from something. */
export interface FigureOf<T> extends Figure {
  /** SI; null where there is none. */
  readonly of: (from: T) => number | null;
}

/** An SI value of a figure as it is read: '7.84 µm', or why there is none. */
export function figureText({ unit, digits, absent = '—' }: Figure, value: number | null): string {
  return value === null ? absent : ranged(value, unit, digits);
}

/** The same figure of a certain time or state: 'Reversal error B, worn'. */
export function qualified<F extends Figure>(figure: F, qualifier: string): F {
  return { ...figure, label: `${figure.label}, ${qualifier}` };
}
