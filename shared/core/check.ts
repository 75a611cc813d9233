import { CROSS_RULES } from './crossChecks.ts';
import { parameterNamed } from './parameters/labels.ts';
import type { NumberRow, Row, RowValue } from './parameters/row.ts';
import {
  isParameterName,
  PARAMETER_NAMES,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
  parameterRow,
} from './parameters/table.ts';
import {
  didYouMean,
  entryProblem,
  isNot,
  isRecord,
  MAX_PROBLEMS,
  type Problem,
  problem,
  shown,
  unknownName,
} from './problem.ts';
import { exactly, lowerLimit, type Sentence, sentence, upperLimit } from './sentence.ts';

interface CheckedParameters {
  /** The legal entries, and only those: together with `base` they make a legal set. */
  readonly changes: ParameterChanges;
  readonly problems: readonly Problem[];
}

/**
 * Checks named values (SI) that are to be laid over `base`, a legal set. Anything may come in; each bad entry gives a
 * problem and is left out, also where it is legal by itself but not beside the others.
 */
export function checkParameters(input: unknown, base: Parameters): CheckedParameters {
  if (!isRecord(input)) {
    const message = `Parameters must be an object of names and values, not ${shown(input)}.`;
    return { changes: {}, problems: [problem('', input, message)] };
  }
  const changes = new Map<ParameterName, RowValue>();
  const problems: Problem[] = [];
  for (const [name, value] of Object.entries(input)) {
    if (problems.length === MAX_PROBLEMS) {
      problems.push(problem('', undefined, 'There are more problems. Fix these first.'));
      break;
    }
    if (!isParameterName(name)) {
      problems.push(unknownName('a parameter', name, PARAMETER_NAMES, value));
      continue;
    }
    const checked = checkValue(value, parameterRow(name));
    if ('legal' in checked) changes.set(name, checked.legal);
    else problems.push(entryProblem(name, value, checked.wrong, parameterNamed(name)));
  }
  dropContradictions(changes, base, problems);
  return { changes: Object.fromEntries(changes) as ParameterChanges, problems };
}

/** Takes out the changes that contradict each other or the base. */
function dropContradictions(
  changes: Map<ParameterName, RowValue>,
  base: Parameters,
  problems: Problem[],
): void {
  for (;;) {
    const merged = { ...base, ...Object.fromEntries(changes) } as Parameters;
    const broken = brokenRule(merged, changes);
    if (!broken) return;
    const [field, ...others] = broken.changed;
    problems.push(problem(field, merged[field], broken.message));
    for (const name of [field, ...others]) changes.delete(name);
  }
}

/** The first rule that the changed parameters break, and which of them it is about. */
function brokenRule(p: Parameters, changes: ReadonlyMap<ParameterName, unknown>) {
  for (const { fields, broken } of CROSS_RULES) {
    const [first, ...others] = fields.filter((name) => changes.has(name));
    const message = first === undefined ? null : broken(p);
    if (first !== undefined && message) return { changed: [first, ...others] as const, message };
  }
  return null;
}

/** A checked value, or what is wrong with it: value, allowed range, what to do. */
export type CheckedValue<T> = { readonly legal: T } | { readonly wrong: Sentence };

/** Checks one value (SI) against a row of a table. */
export function checkValue(value: unknown, row: Row): CheckedValue<RowValue> {
  switch (row.kind) {
    case 'number':
      return checkNumber(value, row);
    case 'choice':
      return checkOption(value, row.options);
    case 'switch':
      return typeof value === 'boolean' ? { legal: value } : { wrong: [isNot(value, 'true or false')] };
  }
}

/** Checks that a value is one of a list. `otherwise` says what else would do. */
export function checkOption<T extends string>(
  value: unknown,
  options: readonly T[],
  otherwise = '',
): CheckedValue<T> {
  const found = options.find((option) => option === value);
  if (found !== undefined) return { legal: found };
  const meant = typeof value === 'string' ? didYouMean(value, options) : '';
  return { wrong: [`${isNot(value, `one of ${options.join(', ')}`)}${meant}${otherwise}`] };
}

/** A value typed in display units may miss its limit by a rounding: it is taken as the limit. */
const RELATIVE_ROUNDING = 1e-12;

/** Checks one number (SI) against a row of the table. */
export function checkNumber(value: unknown, row: NumberRow): CheckedValue<number> {
  const { min, max, unit, zero, integer } = row;
  if (typeof value !== 'number') {
    return { wrong: sentence`${isNot(value, 'a number')} Enter ${allowed(row)}.` };
  }
  if (!Number.isFinite(value)) {
    const wrong = Number.isNaN(value) ? 'That is no number.' : 'That number is too large.';
    return { wrong: sentence`${wrong} Enter ${allowed(row)}.` };
  }
  if (integer && !Number.isInteger(value)) {
    return {
      wrong: sentence`${exactly(value, unit)} is not a whole number. Enter a whole number, ${allowed(row)}.`,
    };
  }
  if (value === 0 && zero) return { legal: 0 };
  const clamped = Math.min(Math.max(value, min), max);
  if (Math.abs(value - clamped) <= RELATIVE_ROUNDING * Math.abs(clamped)) return { legal: clamped + 0 };
  const nearest =
    clamped === min ? sentence`at least ${lowerLimit(row)}` : sentence`at most ${upperLimit(row)}`;
  const fix = zero && clamped === min ? sentence`0 (off), or ${nearest}` : nearest;
  return { wrong: sentence`${exactly(value, unit)} is outside ${allowed(row)}. Enter ${fix}.` };
}

/** The allowed range: '0, or 0.01 µm to 1000 µm'. */
function allowed(row: NumberRow): Sentence {
  return sentence`${row.zero && row.min > 0 ? '0, or ' : ''}${lowerLimit(row)} to ${upperLimit(row)}`;
}
