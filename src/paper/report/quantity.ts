import { asRate, shortest } from '../../../shared/core/format.ts';
import { type NumberRow, optionText, type Row } from '../../../shared/core/parameters/row.ts';
import type { Unit } from '../../../shared/core/units.ts';

/** Nobody states a job to more. */
const DIGITS = 6;

/** A quantity as a table of the report has it: '10 in', '8 per kWh'. */
export function quantityText(value: number, unit: Unit, digits = DIGITS): string {
  return asRate(shortest(value, unit, digits));
}

/** A value of a table of rows as it is read: '250 mm', 'yes', 'back and forth'. */
export function rowValueText(row: Row, value: number | string | boolean, digits = DIGITS): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (row.kind === 'choice') return optionText(row, String(value));
  if (row.kind !== 'number' || typeof value === 'string') return String(value);
  return isOff(row, value) ? 'none' : quantityText(value, row.unit, digits);
}

function isOff(row: NumberRow, value: number): boolean {
  return value === 0 && row.zero;
}
