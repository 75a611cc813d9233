import { quantityText } from './quantityText.ts';

/** One factor of a conversion: its symbol in the formula, its SI value, and its value as text. */
export interface Factor {
  readonly symbol: string;
  readonly value: number;
  readonly text: string;
}

export interface Converted {
  readonly value: number;
  readonly unit: string;
  /** In symbols, in numbers, and the result. */
  readonly formula: string;
}

/** A quantity with a symbol; `value` in `unit`. */
export function factor(symbol: string, value: number, unit: string): Factor {
  return { symbol, value, text: quantityText(value, unit) };
}

/** A number that reads the same in symbols and in numbers: 2π, 100 %, 1 ms. */
export function fixedFactor(text: string, value: number): Factor {
  return { symbol: text, value, text };
}

export const PERCENT = fixedFactor('100 %', 100);
export const MILLISECOND = fixedFactor('1 ms', 1e-3);
export const TWO_PI = fixedFactor('2π', 2 * Math.PI);

/**
 * The product of `over` divided by that of `under`. Value and formula come from the same factors, so they cannot disagree.
 * `shownIn` is the number of `unit` in one SI unit of the result: 1000 for milliseconds.
 */
export function converted(
  name: string,
  over: readonly Factor[],
  under: readonly Factor[],
  unit: string,
  shownIn = 1,
): Converted {
  const product = (factors: readonly Factor[]) => factors.reduce((value, each) => value * each.value, 1);
  const value = (product(over) / product(under)) * shownIn;
  const inSymbols = fraction(over, under, 'symbol');
  const inNumbers = fraction(over, under, 'text');
  const steps = [name, inSymbols, inNumbers, quantityText(value, unit)];
  return { value, unit, formula: steps.filter((step, k) => step !== steps[k - 1]).join(' = ') };
}

function fraction(over: readonly Factor[], under: readonly Factor[], part: 'symbol' | 'text'): string {
  const join = (factors: readonly Factor[]) => factors.map((each) => each[part]).join(' · ');
  const top = over.length === 0 ? '1' : join(over);
  if (under.length === 0) return top;
  return `${top} / ${under.length > 1 ? `(${join(under)})` : join(under)}`;
}
