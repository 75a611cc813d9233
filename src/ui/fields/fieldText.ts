import { fromSI, printedUnit, type Unit } from '../../../shared/core/units.ts';

const DIGITS = 6;

/**
 * The text of a field: a number in its unit, short, and readable again by the same field. Plain decimals from 0.001 to
 * below a million, powers of ten beyond.
 */
export function fieldText(value: number, unit: Unit): string {
  const shown = Number(fromSI(value, printedUnit(unit)).toPrecision(DIGITS));
  const size = Math.abs(shown);
  if (shown !== 0 && (size < 1e-3 || size >= 1e5)) return shown.toExponential().replace('e+', 'e');
  return String(shown);
}
