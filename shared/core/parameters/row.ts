import type { UnitSystem } from '../unitSystem.ts';
import { printedUnit, type Unit, unitIn } from '../units.ts';

/**
 * One row of the parameter table. All values are SI; `unit` is what a person reads and types.
 * `restart` marks the few parameters that change the structure of the model: they take effect by a restart
 * of the scene; every other change takes effect at the next position-loop sample of the running axis.
 */
interface RowBase {
  readonly symbol: string;
  readonly meaning: string;
  /** What a person calls it, where its name says too little: 'Position gain' for `Kp`. */
  readonly label?: string;
  readonly restart: boolean;
}

export interface NumberRow extends RowBase {
  readonly kind: 'number';
  readonly unit: Unit;
  readonly min: number;
  readonly max: number;
  /** 'log' spans decades between min and max; with `zero`, exactly 0 ("off") is legal too. */
  readonly scale: 'linear' | 'log';
  readonly zero: boolean;
  readonly integer: boolean;
  readonly default: number;
  /** How its amperes or volts count; undefined where it has none. */
  readonly form?: 'rms' | 'peak' | 'dc';
  /** Of a winding's value, which is from line to line: what makes it of the value of one phase (wye). */
  readonly perPhase?: number;
}

export interface ChoiceRow<O extends string = string> extends RowBase {
  readonly kind: 'choice';
  readonly options: readonly O[];
  readonly default: O;
  /** How options are read by a person, where the option itself says too little. */
  readonly words?: Partial<Readonly<Record<O, string>>>;
}

interface SwitchRow extends RowBase {
  readonly kind: 'switch';
  readonly default: boolean;
}

export type Row = NumberRow | ChoiceRow | SwitchRow;

/** A value of any row. */
export type RowValue = number | string | boolean;

/** The type of a value of a row. */
export type ValueOf<R> = R extends NumberRow
  ? number
  : R extends ChoiceRow<infer O>
    ? O
    : R extends SwitchRow
      ? boolean
      : never;

interface NumberOptions {
  label?: string;
  zero?: boolean;
  integer?: boolean;
  restart?: boolean;
  form?: 'rms' | 'peak' | 'dc';
  perPhase?: number;
}

type NumberMaker = (
  symbol: string,
  unit: Unit,
  range: readonly [min: number, max: number],
  byDefault: number,
  meaning: string,
  options?: NumberOptions,
) => NumberRow;

const numberRow =
  (scale: NumberRow['scale']): NumberMaker =>
  (
    symbol,
    unit,
    [min, max],
    byDefault,
    meaning,
    { zero = false, integer = false, restart = false, ...electrical } = {},
  ) => ({
    kind: 'number',
    symbol,
    unit,
    min,
    max,
    scale,
    zero,
    integer,
    restart,
    default: byDefault,
    meaning,
    ...electrical,
  });

/** A row as a person of this system of units reads it. */
export function rowIn<R extends Row>(system: UnitSystem, row: R): R {
  return row.kind === 'number' ? { ...row, unit: unitIn(system, row.unit) } : row;
}

/** The unit of a row with the form of its amperes or volts: 'A peak', 'N/A RMS'. */
export function unitWithForm({ unit, form }: Pick<NumberRow, 'unit' | 'form'>): string {
  const shown = printedUnit(unit);
  const isSaid = shown === 'A peak' || shown === 'A RMS' || form === undefined || form === 'dc';
  return isSaid ? shown : `${shown} ${form === 'rms' ? 'RMS' : 'peak'}`;
}

export const linear: NumberMaker = numberRow('linear');
export const log: NumberMaker = numberRow('log');

export const choice = <const O extends string>(
  symbol: string,
  options: readonly O[],
  byDefault: NoInfer<O>,
  meaning: string,
  { restart = false, ...read }: { restart?: boolean } & Pick<ChoiceRow<O>, 'words'> = {},
): ChoiceRow<O> => ({ kind: 'choice', symbol, options, default: byDefault, meaning, restart, ...read });

/** An option as a person reads it. */
export function optionText({ words }: ChoiceRow, option: string): string {
  return words?.[option] ?? option;
}

export const toggle = (
  symbol: string,
  byDefault: boolean,
  meaning: string,
  { restart = false } = {},
): SwitchRow => ({ kind: 'switch', symbol, default: byDefault, meaning, restart });
