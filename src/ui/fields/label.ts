import { parameterLabel } from '../../../shared/core/parameters/labels.ts';
import type { NumberRow, Row } from '../../../shared/core/parameters/row.ts';
import { fieldText } from './fieldText.ts';

export { parameterLabel };

/** What a field may hold, in its own unit. */
export function rangeText(row: Row): string {
  if (row.kind === 'choice') return `One of: ${row.options.join(', ')}.`;
  if (row.kind === 'switch') return 'On or off.';
  const { min, max, unit, zero } = row;
  const off = zero ? ', or off' : '';
  const whole = row.integer ? 'Whole numbers from' : 'From';
  return `${whole} ${fieldText(min, unit)} to ${withUnit(fieldText(max, unit), row)}${off}.`;
}

/** A value as the panel writes it in a sentence. */
export function valueText(row: Row, value: number | string | boolean): string {
  if (typeof value === 'boolean') return value ? 'on' : 'off';
  if (row.kind !== 'number' || typeof value === 'string') return String(value);
  return value === 0 && row.zero ? 'off' : withUnit(fieldText(value, row.unit), row);
}

function withUnit(text: string, { unit }: NumberRow): string {
  return unit === '' ? text : `${text} ${unit}`;
}
