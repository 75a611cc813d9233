import { present } from '../../../shared/core/at.ts';

const PREFIXES: Readonly<Record<string, number>> = {
  p: 1e-12,
  n: 1e-9,
  µ: 1e-6,
  m: 1e-3,
  k: 1e3,
  M: 1e6,
  G: 1e9,
};
const TEXT: Readonly<Record<string, number>> = {
  '2π': 2 * Math.PI,
  '√2': Math.SQRT2,
  '√3': Math.sqrt(3),
  '½': 0.5,
  '100 %': 100,
  '60 s/min': 60,
  '0.06 s·(m/min)/mm': 0.06,
};

/**
 * What the numbers of a formula come to, worked out from its text alone: 'K = a · b / (c · d) = 2 N/m · 1 nm / (4 A · 1 ms) = …'; of one
 * without such a step, what it says at its end. Null where that is no quantity.
 */
export function evaluated(formula: string): number | null {
  const steps = formula.split(' = ');
  return sum(present(steps.at(-2))) ?? sum(present(steps.at(-1)));
}

function sum(text: string): number | null {
  return text
    .split(' + ')
    .map(product)
    .reduce<number | null>((total, each) => (total === null || each === null ? null : total + each), 0);
}

function product(text: string): number | null {
  const [over = '', under = '1', ...more] = text.split(' / ');
  if (more.length > 0) return null;
  const factors = (part: string) => part.split(' · ').map(quantity);
  const multiply = (values: (number | null)[]) =>
    values.reduce<number | null>((all, each) => (all === null || each === null ? null : all * each), 1);
  const [top, bottom] = [multiply(factors(over)), multiply(factors(under.replace(/^\((.*)\)$/, '$1')))];
  return top === null || bottom === null ? null : top / bottom;
}

/** '2.27·10⁶ N/m', '53.5 µA/count': a number, a power of ten, and a unit whose prefix counts. */
function quantity(text: string): number | null {
  if (text in TEXT) return present(TEXT[text]);
  const [, mantissa, power = '', unit = ''] = /^([−\d.]+)(?:·10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+))? ?(.*)$/.exec(text) ?? [];
  if (mantissa === undefined) return null;
  const exponent = [...power].map((digit) => '⁻⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(digit));
  const ten = exponent[0] === 0 ? -Number(joined(exponent.slice(1))) : Number(joined(exponent) || 0);
  return Number(mantissa.replace('−', '-')) * 10 ** ten * prefixOf(unit);
}

function joined(digits: readonly number[]): string {
  return digits.map((digit) => digit - 1).join('');
}

function prefixOf(unit: string): number {
  const [, prefix] = /^([pnµmkMG])(?:A|N|V|H|m|s|Hz)(?:\/| |$)/.exec(unit) ?? [];
  return prefix === undefined ? 1 : present(PREFIXES[prefix]);
}
