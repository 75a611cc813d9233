import type { CheckedValue } from './check.ts';
import { isNot, isPrintable, shown } from './problem.ts';

export const LONGEST_TITLE = 120;

/** Checks one line of text. */
export function checkText(
  value: unknown,
  longest: number,
  { mayBeEmpty }: { mayBeEmpty: boolean },
): CheckedValue<string> {
  if (typeof value !== 'string') return wrong(`${isNot(value, 'text')} Enter one line of text.`);
  if (value.length > longest) {
    return wrong(`it has ${value.length} characters. Enter at most ${longest}.`);
  }
  if (!mayBeEmpty && value.trim() === '') return wrong('it is empty. Enter one line of text.');
  if (!isPrintable(value)) {
    return wrong(`${shown(value)} contains control characters. Enter one line of text.`);
  }
  return { legal: value };
}

function wrong(message: string): { readonly wrong: readonly [string] } {
  return { wrong: [message] };
}
