import type { NumberRow } from '../../core/parameters/row.ts';
import { PARAMETERS, type Parameters } from '../../core/parameters/table.ts';

export type NumberName = {
  [K in keyof Parameters]: Parameters[K] extends number ? K : never;
}[keyof Parameters];

/** Digits that a tuned value keeps: a person can read it, and the loop does not feel the rest. */
export const TUNED_DIGITS = 3;

/** The nearest legal value of a parameter. */
export function within(name: NumberName, value: number): number {
  const { min, max, zero }: NumberRow = PARAMETERS[name];
  return zero && value < min ? 0 : Math.min(Math.max(value, min), max);
}

/** The same, rounded to what is worth showing. */
export function rounded(name: NumberName, value: number): number {
  return within(name, Number(value.toPrecision(TUNED_DIGITS)));
}
