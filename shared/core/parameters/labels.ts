import { shortest } from '../format.ts';
import type { Name } from '../sentence.ts';
import { optionText } from './row.ts';
import { type ParameterName, type Parameters, parameterRow } from './table.ts';

/** How a person calls a parameter: `accelerationFeedforward` is “Acceleration feedforward”. */
export function parameterLabel(name: ParameterName): string {
  return parameterRow(name).label ?? nameAsText(name);
}

/** A parameter in a message; it is worded as a name or as a label where it is shown. */
export function parameterNamed(name: ParameterName): Name {
  return { name, label: parameterLabel(name) };
}

/** `moveTime` as “Move time”. */
export function nameAsText(name: string): string {
  const text = name
    .replace(/([a-z])([A-Z0-9])/g, '$1 $2')
    .replace(/(\d)([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace('back emf', 'back-EMF');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A value in the unit of its row, as short as ten digits allow: '14.2 kg', 'on', 'shuttle'. */
export function parameterText(name: ParameterName, value: Parameters[ParameterName]): string {
  const row = parameterRow(name);
  if (typeof value === 'boolean') return value ? 'on' : 'off';
  if (row.kind === 'choice') return optionText(row, String(value));
  if (row.kind !== 'number' || typeof value === 'string') return String(value);
  return value === 0 && row.zero && row.min > 0 ? 'off' : shortest(value, row.unit);
}
