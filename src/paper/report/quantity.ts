import { shortest } from '../../../shared/core/format.ts';
import type { NumberRow, Row } from '../../../shared/core/parameters/row.ts';
import { type Unit, type UnitSystem, unitIn } from '../../../shared/core/units.ts';

/** Nobody states a job or a datasheet to more. */
const DIGITS = 6;

/** A quantity in the system that a person chose; beside inch units stands the metric one. */
export function quantityIn(system: UnitSystem, value: number, unit: Unit): string {
  const metric = read(value, unit);
  const chosen = unitIn(system, unit);
  return chosen === unit ? metric : `${read(value, chosen)} (${metric})`;
}

function read(value: number, unit: Unit): string {
  return shortest(value, unit, DIGITS).replace(' 1/', ' per ');
}

/** A value of a table of rows as it is read: '250 mm', 'yes', 'back and forth'. */
export function valueIn(system: UnitSystem, row: Row, value: number | string | boolean): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (row.kind !== 'number' || typeof value === 'string') return String(value);
  return isOff(row, value) ? 'none' : quantityIn(system, value, row.unit);
}

function isOff(row: NumberRow, value: number): boolean {
  return value === 0 && row.zero;
}
