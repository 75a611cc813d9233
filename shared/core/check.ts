import { CROSS_RULES } from './crossChecks.ts';
import { shortest } from './format.ts';
import type { NumberRow, Row } from './parameters/row.ts';
import {
  isParameterName,
  PARAMETER_NAMES,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
  parameterRow,
} from './parameters/table.ts';
import { didYouMean, isRecord, MAX_PROBLEMS, type Problem, shown, unknownName } from './problem.ts';
import { fromSI, toSI, type Unit } from './units.ts';

export { crossChecks } from './crossChecks.ts';

export interface CheckedParameters {
  /** The legal entries, and only those: together with `base` they make a legal set. */
  readonly changes: ParameterChanges;
  readonly problems: readonly Problem[];
}

/**
 * Checks named values (SI) that are to be laid over `base`, a legal set. Anything may come in; each bad entry gives a problem and is
 * left out, also where it is legal by itself but not beside the others.
 */
export function checkParameters(input: unknown, base: Parameters): CheckedParameters {
  if (!isRecord(input)) {
    return {
      changes: {},
      problems: [
        {
          field: '',
          value: input,
          message: `Parameters must be an object of names and values, not ${shown(input)}.`,
        },
      ],
    };
  }
  const changes = new Map<ParameterName, number | string | boolean>();
  const problems: Problem[] = [];
  for (const [name, value] of Object.entries(input)) {
    if (problems.length === MAX_PROBLEMS) {
      problems.push({
        field: '',
        value: undefined,
        message: 'There is more that is wrong. Mend these first.',
      });
      break;
    }
    if (!isParameterName(name)) {
      problems.push(unknownName('a parameter', name, PARAMETER_NAMES, value));
      continue;
    }
    const checked = checkValue(value, parameterRow(name));
    if ('legal' in checked) changes.set(name, checked.legal);
    else problems.push({ field: name, value, message: `${name}: ${checked.wrong}` });
  }
  dropContradictions(changes, base, problems);
  return { changes: Object.fromEntries(changes) as ParameterChanges, problems };
}

/** Takes out the changes that contradict each other or the base. */
function dropContradictions(
  changes: Map<ParameterName, number | string | boolean>,
  base: Parameters,
  problems: Problem[],
): void {
  for (;;) {
    const merged = { ...base, ...Object.fromEntries(changes) } as Parameters;
    const rule = CROSS_RULES.find(
      ({ fields, broken }) => fields.some((name) => changes.has(name)) && broken(merged),
    );
    if (!rule) return;
    const changed = rule.fields.filter((name) => changes.has(name));
    const field = changed[0]!;
    problems.push({ field, value: merged[field], message: rule.broken(merged)! });
    for (const name of changed) changes.delete(name);
  }
}

/** A checked value, or what is wrong with it: value, allowed range, what to do. */
export type CheckedValue<T> = { readonly legal: T } | { readonly wrong: string };

/** Checks one value (SI) against a row of a table. */
export function checkValue(value: unknown, row: Row): CheckedValue<number | string | boolean> {
  switch (row.kind) {
    case 'number':
      return checkNumber(value, row);
    case 'choice':
      return row.options.includes(value as string)
        ? { legal: value as string }
        : {
            wrong: `${shown(value)} is not one of ${row.options.join(', ')}.${meantOption(value, row.options)}`,
          };
    case 'switch':
      return typeof value === 'boolean'
        ? { legal: value }
        : { wrong: `${shown(value)} is not true or false.` };
  }
}

function meantOption(value: unknown, options: readonly string[]): string {
  return typeof value === 'string' ? didYouMean(value, options) : '';
}

/** A value typed in display units may miss its limit by a rounding: it is taken as the limit. */
const RELATIVE_ROUNDING = 1e-12;

/** Checks one number (SI) against a row of the table. */
export function checkNumber(value: unknown, row: NumberRow): CheckedValue<number> {
  const { min, max, unit, zero, integer } = row;
  if (typeof value !== 'number') {
    return { wrong: `${shown(value)} is not a number. Give ${allowedText(row)}.` };
  }
  if (!Number.isFinite(value)) return { wrong: `${value} is not a finite number. Give ${allowedText(row)}.` };
  if (integer && !Number.isInteger(value)) {
    return {
      wrong: `${shortest(value, unit)} is not a whole number. Give a whole number, ${allowedText(row)}.`,
    };
  }
  if (value === 0 && zero) return { legal: 0 };
  const clamped = Math.min(Math.max(value, min), max);
  if (Math.abs(value - clamped) <= RELATIVE_ROUNDING * Math.abs(clamped)) return { legal: clamped + 0 };
  const nearest = clamped === min ? `at least ${minText(row)}` : `at most ${maxText(row)}`;
  const fix = zero && clamped === min ? `0 (off), or ${nearest}` : nearest;
  return { wrong: `${shortest(value, unit)} is outside ${allowedText(row)}. Give ${fix}.` };
}

/** The allowed range in the unit of the row: '0, or 0.01 µm to 1000 µm'. */
export function allowedText(row: NumberRow): string {
  return `${row.zero && row.min > 0 ? '0, or ' : ''}${minText(row)} to ${maxText(row)}`;
}

/** A limit that is no short number in its unit is rounded to the legal side. */
const LIMIT_DIGITS = 4;

function minText({ min, unit }: NumberRow): string {
  return shortest(rounded(min, unit, Math.ceil), unit);
}

function maxText({ max, unit }: NumberRow): string {
  return shortest(rounded(max, unit, Math.floor), unit);
}

function rounded(limit: number, unit: Unit, round: (value: number) => number): number {
  const value = fromSI(limit, unit);
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) + 1 - LIMIT_DIGITS);
  const whole = value / step;
  const isShort = value === 0 || Math.abs(whole - Math.round(whole)) < 1e-6;
  return isShort ? limit : toSI(round(whole) * step, unit);
}
