/** A number as a person writes it: no hexadecimal, no words. */
const DECIMAL = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** The number that a text is; NaN for anything else. */
export function decimalOf(text: string): number {
  return DECIMAL.test(text.trim()) ? Number(text) : Number.NaN;
}
