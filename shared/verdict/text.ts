import { inUnit } from '../core/format.ts';
import type { JudgedCandidate } from './judgement.ts';

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const PARTS = [
  'third',
  'quarter',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
  'eleventh',
  'twelfth',
];

/** From here on a person says twice and three times, below it so many per cent. */
const TIMES_FROM = 1.9;
/** A factor this near to a whole number is called by it. */
const NEAR = 0.08;
/** Beyond this a factor is told by its size alone. */
const UNCOUNTED = 1000;

export function numberWord(count: number): string {
  return NUMBERS[count] ?? String(count);
}

interface FactorText {
  /** A whole that is counted, before 'as large' or 'the current': 'eleven times', 'a third'. */
  readonly times: string | null;
  /** Before 'more' or 'less', 'larger' or 'smaller': '38 %', '40 times'. */
  readonly degree: string;
}

/** Words for a factor above or below 1: 11 is 'eleven times', 0.5 'half', 1.38 '38 %', 0.02 '50 times'. */
export function factorText(factor: number): FactorText {
  if (factor > 1) return { times: multiple(factor), degree: inUnit(factor - 1, '%', 2) };
  const isTiny = 1 / factor > NUMBERS.length - 1 + NEAR;
  const percent = inUnit(1 - factor, '%', 2);
  return { times: fraction(1 / factor), degree: isTiny ? (multiple(1 / factor) ?? percent) : percent };
}

function multiple(factor: number): string | null {
  if (factor < TIMES_FROM) return null;
  if (factor > UNCOUNTED) return 'more than a thousand times';
  if (factor > NUMBERS.length - 1 + NEAR) return `${Number(factor.toPrecision(2))} times`;
  const whole = Math.round(factor);
  if (Math.abs(factor / whole - 1) > NEAR) return `${factor.toFixed(1)} times`;
  return whole === 2 ? 'twice' : `${NUMBERS[whole]} times`;
}

function fraction(inverse: number): string | null {
  if (inverse < TIMES_FROM || inverse > NUMBERS.length - 1 + NEAR) return null;
  const whole = Math.round(inverse);
  if (Math.abs(inverse / whole - 1) > NEAR) return null;
  return whole === 2 ? 'half' : `${whole === 8 || whole === 11 ? 'an' : 'a'} ${PARTS[whole - 3]}`;
}

/** 'A', 'A and B', 'A, B and C'. */
export function listed(label: readonly string[], last = 'and'): string {
  if (label.length < 2) return label.join('');
  return `${label.slice(0, -1).join(', ')} ${last} ${label.at(-1)}`;
}

/** A candidate at its first mention. */
export function named({ letter, title }: Pick<JudgedCandidate, 'letter' | 'title'>): string {
  return `${letter} (${title})`;
}

export function sentence(label: string): string {
  const text = label.charAt(0).toUpperCase() + label.slice(1);
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** With a small first letter, unless it is one of a symbol or a name of one letter. */
export function lowered(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** A sentence as part of another one. */
export function clause(text: string): string {
  return text.replace(/\.$/, '');
}
