import { at } from '../../../shared/core/at.ts';
import { toSI, type Unit } from '../../../shared/core/units.ts';
import { unitMeaning } from './unitExpression.ts';

type Typed = { readonly value: number } | { readonly problem: string };

const NUMBER = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(.*)$/i;

/**
 * The SI value of what was typed into a field of `unit`: a bare number counts in that unit, and any unit of the same
 * kind may follow it ("5 um", "0.2m", "0.5 in", "70 °F", "3e3"). "off" is zero where zero is legal; the range is checked elsewhere.
 */
export function readTyped(text: string, unit: Unit): Typed {
  const plain = text.trim().replaceAll('−', '-');
  if (plain.toLowerCase() === 'off') return { value: 0 };
  const [, digits, rest = ''] = NUMBER.exec(plain) ?? [];
  const unitText = rest.trim();
  const wanted = unit === '' ? 'a plain number' : `a number in ${unit}`;
  if (digits === undefined) return { problem: `“${plain}” is not a number; type ${wanted}.` };
  if (unitText.startsWith(',')) return { problem: `“${plain}”: use a decimal point, not a comma.` };
  if (unitText === '' || unitText === unit) return { value: toSI(Number(digits), unit) };

  const typed = unitMeaning(unitText);
  if (!typed) return { problem: `“${unitText}” is not a known unit; type ${wanted}.` };
  const own = unitMeaning(unit);
  const isSameKind = own && typed.dimension.every((d, i) => Math.abs(d - at(own.dimension, i)) < 1e-9);
  if (!isSameKind) return { problem: `“${unitText}” does not fit here; type ${wanted}.` };
  return { value: Number(digits) * typed.factor + (typed.offset ?? 0) };
}
