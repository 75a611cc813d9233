import { checkParameters } from './check.ts';
import { compensationRows } from './parameters/compensation.ts';
import { loopRows } from './parameters/drive.ts';
import { filterRows } from './parameters/filters.ts';
import { shapingRows } from './parameters/shaping.ts';
import type { ParameterChanges, Parameters } from './parameters/table.ts';
import { entryFailure, type Failure, isNot, isRecord, MAX_PROBLEMS, unknownName } from './problem.ts';

/** What a person tunes: the position loop, the shaping of its command, compensation, the bandwidth of the current loop, and the rates they hold for. */
export type TuningName =
  | keyof typeof loopRows
  | keyof typeof filterRows
  | keyof typeof shapingRows
  | keyof typeof compensationRows
  | 'currentBandwidth'
  | 'currentRate'
  | 'positionDivider';

export type Tuning = Readonly<Pick<Parameters, TuningName>>;

export const TUNING_NAMES: readonly TuningName[] = [
  ...(Object.keys(loopRows) as (keyof typeof loopRows)[]),
  ...(Object.keys(filterRows) as (keyof typeof filterRows)[]),
  ...(Object.keys(shapingRows) as (keyof typeof shapingRows)[]),
  ...(Object.keys(compensationRows) as (keyof typeof compensationRows)[]),
  'currentBandwidth',
  'currentRate',
  'positionDivider',
];

export function isTuningName(name: string): name is TuningName {
  return (TUNING_NAMES as readonly string[]).includes(name);
}

export function tuningOf(p: Parameters): Tuning {
  return Object.fromEntries(TUNING_NAMES.map((name) => [name, p[name]])) as Tuning;
}

/** Checks a tuning, or a part of one, that is to be laid over `base`, a legal set: all of it is legal, or what is wrong. */
export function checkTuning(
  input: unknown,
  base: Parameters,
): { readonly changes: ParameterChanges } | Failure {
  if (!isRecord(input)) {
    return entryFailure('parameters', input, isNot(input, 'an object of gains by their names'));
  }
  const names = Object.keys(input);
  if (names.length === 0) return entryFailure('parameters', input, 'there are no gains in it.');
  const strays = names.filter((name) => !isTuningName(name)).slice(0, MAX_PROBLEMS);
  if (strays.length > 0) {
    return { problems: strays.map((name) => unknownName('a gain', name, TUNING_NAMES, input[name])) };
  }
  const { changes, problems } = checkParameters(input, base);
  return problems.length > 0 ? { problems } : { changes };
}
