import { at } from '../core/at.ts';
import { type CheckedValue, checkNumber, checkOption } from '../core/check.ts';
import { CROSS_RULES } from '../core/crossChecks.ts';
import { parameterNamed } from '../core/parameters/labels.ts';
import type { NumberRow } from '../core/parameters/row.ts';
import { linear } from '../core/parameters/row.ts';
import type { Parameters } from '../core/parameters/table.ts';
import {
  entryProblem,
  type Failure,
  isNot,
  isRecord,
  type Problem,
  problem,
  unknownName,
  within,
} from '../core/problem.ts';
import type { Scene } from '../core/scene.ts';
import { lowerLimit, type Sentence, sentence } from '../core/sentence.ts';
import { cycleDuration } from '../motion/cycle.ts';
import { type Limits, RUN_FIGURE_NAMES, RUN_FIGURES, type RunFigureName } from './runFigures.ts';
import {
  type NumberName,
  SPREAD_KINDS,
  SPREADABLE,
  type Spread,
  type SpreadKind,
  spreadEnds,
  spreadRow,
} from './spread.ts';
import { MAX_RUNS, MAX_SPREADS, SAMPLINGS, type Spreads, type ToleranceStudy } from './toleranceStudy.ts';

export type ToleranceResult = { readonly study: ToleranceStudy } | Failure;

/** Rows of what a study has besides values of the parameter table. */
const SHARE_ROW = linear('±', '%', [1e-4, 1], 0.05, 'To either side of the value of the scene');
const CUT_ROW = linear('', '', [0.5, 6], 3, 'Nothing lies beyond so many standard deviations');
export const RUNS_ROW = linear('n', '', [1, MAX_RUNS], 1000, 'Number of machines', { integer: true });
export const SEED_ROW = linear('', '', [0, 2 ** 31 - 1], 1, 'Seed of sampling and encoder noise', {
  integer: true,
});

const limitRow = (name: RunFigureName, max: number, form?: 'peak'): NumberRow => {
  const { unit, definition } = RUN_FIGURES[name];
  return linear('', unit, [0, max], 0, definition, form && { form });
};

/** What a figure may be limited to. */
export const LIMIT_ROWS: Readonly<Record<RunFigureName, NumberRow>> = {
  settlingTime: limitRow('settlingTime', 100),
  peakError: limitRow('peakError', 1),
  rmsError: limitRow('rmsError', 1),
  peakCurrent: limitRow('peakCurrent', 1e4, 'peak'),
  windingTemperature: limitRow('windingTemperature', 500),
};

/** Longer cycles would take a study of thousands too long, s. */
const LONGEST_CYCLE = 60;

interface ToleranceInput {
  readonly spreads: unknown;
  readonly limits: unknown;
  readonly sampling: unknown;
  readonly seed: unknown;
  readonly runs: unknown;
}

/** Checks what is to be varied on a legal scene. Total: a legal study, or what is wrong. */
export function checkTolerance(scene: Scene, input: ToleranceInput): ToleranceResult {
  const problems: Problem[] = [...sceneProblems(scene)];
  const take = <T>(field: string, value: unknown, checked: CheckedValue<T>): T | undefined => {
    if ('legal' in checked) return checked.legal;
    problems.push(entryProblem(field, value, checked.wrong));
    return undefined;
  };
  const sampling = take('sampling', input.sampling, checkOption(input.sampling, SAMPLINGS));
  const seed = take('seed', input.seed, checkNumber(input.seed, SEED_ROW));
  const runs = take('runs', input.runs, checkNumber(input.runs, RUNS_ROW));
  const spreads = checkSpreads(input.spreads, scene.parameters, problems);
  const limits = checkLimits(input.limits, problems);
  if (problems.length === 0) problems.push(...contradictions(spreads, scene.parameters));
  if (problems.length > 0 || sampling === undefined || seed === undefined || runs === undefined)
    return { problems };
  return { study: { scene, spreads, limits, sampling, seed, runs } };
}

function sceneProblems({ parameters: p, moves }: Scene): Problem[] {
  if (p.drive !== 'on')
    return [
      problem('drive', p.drive, `The drive is ${p.drive}. A study needs an axis that moves: switch it on.`),
    ];
  const time = cycleDuration(p, moves);
  if (Number.isFinite(time) && time > LONGEST_CYCLE) {
    const message = `A cycle takes ${time.toFixed(0)} s, and a study runs one for each machine. Shorten it to ${LONGEST_CYCLE} s or less.`;
    return [problem('program', p.program, message)];
  }
  return [];
}

function checkSpreads(input: unknown, p: Parameters, problems: Problem[]): Spreads {
  if (!isRecord(input)) {
    problems.push(
      entryProblem('spreads', input, isNot(input, 'an object of parameters and how they spread')),
    );
    return {};
  }
  const entries = Object.entries(input);
  if (entries.length < 1 || entries.length > MAX_SPREADS) {
    const message = `there are ${entries.length}. Give one to ${MAX_SPREADS} parameters.`;
    problems.push(entryProblem('spreads', entries.length, message));
    return {};
  }
  const legal: [NumberName, Spread][] = [];
  for (const [name, value] of entries) {
    const known = SPREADABLE.find((each) => each === name);
    if (known === undefined) {
      problems.push(unknownName('a parameter that can spread', name, SPREADABLE, value));
      continue;
    }
    const checked = checkSpread(known, value, p[known]);
    if ('legal' in checked) legal.push([known, checked.legal]);
    else problems.push(...checked.problems.map((each) => within('spreads', each)));
  }
  return Object.fromEntries(legal);
}

/** One parameter of a study; `base` is its value in the scene. */
function checkSpread(name: NumberName, input: unknown, base: number): { readonly legal: Spread } | Failure {
  const refuse = (value: unknown, message: string | Sentence, field: string = name) => ({
    problems: [entryProblem(field, value, message, field === name ? parameterNamed(name) : field)],
  });
  if (!isRecord(input)) return refuse(input, isNot(input, 'an object with its kind and its values'));
  const { kind: asked } = input;
  const kind = checkOption(asked, Object.keys(SPREAD_KINDS) as SpreadKind[]);
  if ('wrong' in kind) return refuse(asked, kind.wrong, `${name}.kind`);
  const entries: readonly string[] = SPREAD_KINDS[kind.legal].entries;
  const stray = Object.keys(input).find((entry) => entry !== 'kind' && !entries.includes(entry));
  if (stray !== undefined)
    return {
      problems: [unknownName(`an entry of “${kind.legal}”`, stray, ['kind', ...entries], input[stray])],
    };
  const values: Record<string, number> = {};
  for (const entry of entries) {
    const checked = checkNumber(input[entry], spreadEntryRow(entry, name));
    if ('wrong' in checked) return refuse(input[entry], checked.wrong, `${name}.${entry}`);
    values[entry] = checked.legal;
  }
  const spread = { kind: kind.legal, ...values } as Spread;
  if (spread.kind === 'per cent' && base === 0)
    return refuse(base, 'it is 0 in this scene, and a percentage of 0 is 0. Give two values instead.');
  if (spread.kind === 'uniform' && !(spread.from < spread.to))
    return refuse(spread.to, '“to” must be more than “from”. Exchange them, or widen the range.');
  const wrong = spreadEnds(spread, base)
    .map((end) => wrongEnd(end, spreadRow(name)))
    .find((each) => each !== null);
  return wrong ? refuse(base, wrong) : { legal: spread };
}

/** The standard deviation may be as small as one likes, and is not bound to lie where the values lie. */
export function spreadEntryRow(entry: string, name: NumberName): NumberRow {
  const row = spreadRow(name);
  if (entry === 'share') return SHARE_ROW;
  if (entry === 'cut') return CUT_ROW;
  return entry === 'deviation'
    ? { ...row, min: Number.MIN_VALUE, max: row.max - Math.min(row.min, 0), zero: false }
    : row;
}

/** What is off at 0 cannot be nearly off: a range that begins at 0 would hold values that are not legal. */
function wrongEnd(end: number, row: NumberRow): Sentence | null {
  if (end === 0 && row.min > 0)
    return sentence`the range reaches 0, which switches it off. Begin at ${lowerLimit(row)} or above.`;
  const checked = checkNumber(end, row);
  return 'wrong' in checked ? checked.wrong : null;
}

function checkLimits(input: unknown, problems: Problem[]): Limits {
  if (!isRecord(input)) {
    problems.push(entryProblem('limits', input, isNot(input, 'an object of figures and their limits')));
    return {};
  }
  const legal: [RunFigureName, number][] = [];
  for (const [name, value] of Object.entries(input)) {
    const known = RUN_FIGURE_NAMES.find((each) => each === name);
    if (known === undefined) {
      problems.push(unknownName('a figure', name, RUN_FIGURE_NAMES, value));
      continue;
    }
    const checked = checkNumber(value, LIMIT_ROWS[known]);
    if ('legal' in checked) legal.push([known, checked.legal]);
    else problems.push(within('limits', entryProblem(name, value, checked.wrong)));
  }
  return Object.fromEntries(legal);
}

/** Rules between parameters hold everywhere when they hold at the corners of the ranges that they join. */
function contradictions(spreads: Spreads, p: Parameters): Problem[] {
  for (const { fields, broken } of CROSS_RULES) {
    const ranges = fields.flatMap((field) => {
      const spread = spreads[field as NumberName];
      return spread ? [{ field: field as NumberName, ends: spreadEnds(spread, p[field as NumberName]) }] : [];
    });
    const [first] = ranges;
    if (first === undefined) continue;
    for (let corner = 0; corner < 2 ** ranges.length; corner++) {
      const changes = Object.fromEntries(
        ranges.map(({ field, ends }, k) => [field, at(ends, (corner >> k) & 1)]),
      );
      const message = broken({ ...p, ...changes });
      if (message) return [within('spreads', problem(first.field, changes[first.field], message))];
    }
  }
  return [];
}
