import type { DatasheetForm } from '../../../shared/axis/datasheetForms.ts';
import { parameterLabel } from '../../../shared/core/parameters/labels.ts';
import { type NumberRow, optionText, type Row, unitWithForm } from '../../../shared/core/parameters/row.ts';
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

/** What else may be typed into a field: ' Also takes a motor constant (N/√W).' */
export function otherFormsText(forms: readonly DatasheetForm[] = []): string {
  if (forms.length === 0) return '';
  const each = forms.map(({ name, unit, form, word }) => {
    const said = `${form === 'rms' ? unitWithForm({ unit: unit === 'A' ? 'A RMS' : unit, form }) : unit}`;
    return `${name} (${word ? `${said} ${word}` : said})`;
  });
  return ` Also takes: ${each.join(', ')}.`;
}

/** A value as the panel writes it in a sentence. */
export function valueText(row: Row, value: number | string | boolean): string {
  if (typeof value === 'boolean') return value ? 'on' : 'off';
  if (row.kind === 'choice') return optionText(row, String(value));
  if (row.kind !== 'number' || typeof value === 'string') return String(value);
  return value === 0 && row.zero ? 'off' : withUnit(fieldText(value, row.unit), row);
}

function withUnit(text: string, row: NumberRow): string {
  return row.unit === '' ? text : `${text} ${unitWithForm(row)}`;
}
