import type { CheckedValue } from './check.ts';
import { isPrintable, shown } from './problem.ts';

export const LONGEST_TITLE = 120;

/** Checks one line of text. */
export function checkText(
  value: unknown,
  longest: number,
  { mayBeEmpty }: { mayBeEmpty: boolean },
): CheckedValue<string> {
  if (typeof value !== 'string') return { wrong: `${shown(value)} is not text. Give one line of text.` };
  if (value.length > longest) return { wrong: `it has ${value.length} characters. Give at most ${longest}.` };
  if (!mayBeEmpty && value.trim() === '') return { wrong: 'it is empty. Give one line of text.' };
  if (!isPrintable(value))
    return { wrong: `${shown(value)} holds control characters. Give one line of text.` };
  return { legal: value };
}
