import { inUnit } from '../core/format.ts';

const PREFIXES = ['p', 'n', 'µ', 'm', '', 'k', 'M', 'G'];
const FIRST_POWER = -12;

/** Units that take a prefix; %, 1/s, kg, counts and the gains in SI read better as plain numbers. */
const PREFIXABLE = /^(?:A|N|V|H|m|s|Hz)(?: RMS| peak)?(?:$|\/(?!m$|\(m·s\)$))/;

/** A number of up to `digits` significant digits, without trailing zeros: '2.8·10⁶', '0.125', '−14'. */
export function numberText(value: number, digits = 6): string {
  const text = inUnit(value, '', digits);
  return text.includes('.') ? text.replace(/\.?0+(?=·|$)/, '') : text;
}

/** An SI value with its unit, prefixed where that is usual: '53.5 µA/count', '2.8·10⁶ N/m', '0.5 %/count'. */
export function quantityText(value: number, unit: string, digits = 6): string {
  if (unit === '') return numberText(value, digits);
  if (value === 0 || !PREFIXABLE.test(unit)) return `${numberText(value, digits)} ${unit}`;
  const size = Math.abs(Number(value.toPrecision(digits)));
  const step = Math.floor(Math.floor(Math.log10(size) + 1e-9) / 3) - FIRST_POWER / 3;
  const index = Math.min(Math.max(step, 0), PREFIXES.length - 1);
  const scaled = value / 10 ** (FIRST_POWER + 3 * index);
  return `${numberText(scaled, digits)} ${PREFIXES[index]}${unit}`;
}
