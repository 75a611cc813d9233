import { type ParameterName, parameterRow } from '../../shared/core/parameters/table.ts';
import { parameterLabel } from '../ui/fields/label.ts';

/** True when every word is found in the name, symbol or meaning of the parameter. */
export function matches(name: ParameterName, text: string): boolean {
  const { symbol, meaning } = parameterRow(name);
  const all = `${parameterLabel(name)} ${name} ${symbol} ${symbol.replace('_', '')} ${meaning}`.toLowerCase();
  return text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}
