import type { TuningName } from '../core/tuning.ts';
import type { Converted } from './factor.ts';

/** One line of a gain sheet. */
export interface SheetRow {
  readonly label: string;
  readonly symbol: string;
  /** A number in `unit`, or a word: on, off, none, unlimited. */
  readonly value: number | string;
  readonly unit: string;
  /** How the value is obtained: in symbols and numbers, or in words. */
  readonly how: string;
  /** The full reading, where value and unit do not tell all of it. */
  readonly text?: string;
  /** The parameter that is read back from this line. */
  readonly parameter?: TuningName;
}

export interface SheetSection {
  readonly id: string;
  readonly title: string;
  /** What applies to the whole section: one sentence or formula an entry. */
  readonly text: readonly string[];
  readonly rows: readonly SheetRow[];
}

export function convertedRow(label: string, symbol: string, { value, unit, formula }: Converted): SheetRow {
  return { label, symbol, value, unit, how: formula };
}

export function setRow(label: string, symbol: string, value: number | string, unit = ''): SheetRow {
  return { label, symbol, value, unit, how: '' };
}
