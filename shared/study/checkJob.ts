import { checkValue } from '../core/check.ts';
import { checkText, LONGEST_TITLE } from '../core/checkText.ts';
import {
  entryProblem,
  isRecord,
  MAX_PROBLEMS,
  type Problem,
  problem,
  shown,
  unknownName,
} from '../core/problem.ts';
import { checkMoves } from '../motion/moves.ts';
import { JOB_ENTRIES, type Job, type JobEntry, type JobValues, jobRow } from './job.ts';
import { jobNamed } from './jobLabels.ts';
import { ANYWHERE, JOB_RULES, travelOf } from './jobRules.ts';

interface CheckedJob {
  /** Null while something is wrong with it. */
  readonly job: Job | null;
  readonly problems: readonly Problem[];
}

const TITLE = { name: 'title', label: 'Title' };
const PARTS: readonly string[] = ['title', 'values', 'moves'] satisfies (keyof Job)[];

/** Checks a job, its values in SI. Anything may come in; values that are not stated are the default. */
export function checkJob(input: unknown): CheckedJob {
  if (!isRecord(input))
    return refused([problem('', input, `The job must be an object, not ${shown(input)}.`)]);
  const stray = Object.keys(input).find((name) => !PARTS.includes(name));
  if (stray !== undefined) return refused([unknownName('a part of a job', stray, PARTS, input[stray])]);

  const { title: titleInput, values: valueInputs, moves: moveInputs } = input;
  const problems: Problem[] = [];
  const title = checkText(titleInput, LONGEST_TITLE, { mayBeEmpty: false });
  if ('wrong' in title) problems.push(entryProblem('title', titleInput, title.wrong, TITLE));
  const values = checkValues(valueInputs ?? {}, problems);
  const isList = values?.motion === 'move list';
  const moves = checkMoves(moveInputs ?? [], isList ? travelOf(values) : ANYWHERE);
  if ('problems' in moves) problems.push(...moves.problems);
  if (problems.length > 0 || !values || !('moves' in moves) || !('legal' in title)) return refused(problems);

  const job: Job = { title: title.legal, values, moves: moves.moves };
  const broken = contradictions(job);
  return broken.length > 0 ? refused(broken) : { job, problems: [] };
}

function checkValues(input: unknown, problems: Problem[]): JobValues | null {
  if (!isRecord(input)) {
    problems.push(problem('values', input, `The values of the job must be an object, not ${shown(input)}.`));
    return null;
  }
  for (const name of Object.keys(input))
    if (!isJobEntry(name)) problems.push(unknownName('an entry of a job', name, JOB_ENTRIES, input[name]));
  const values = JOB_ENTRIES.map((name) => {
    const value = input[name];
    if (value === undefined) return [name, jobRow(name).default];
    const checked = checkValue(value, jobRow(name));
    if ('legal' in checked) return [name, checked.legal];
    problems.push(entryProblem(name, value, checked.wrong, jobNamed(name)));
    return [name, undefined];
  });
  return problems.length > 0 ? null : (Object.fromEntries(values) as JobValues);
}

/** What is wrong between the values of a job whose single values are all legal. */
function contradictions(job: Job): Problem[] {
  return JOB_RULES.flatMap(({ field, broken }) => {
    const message = broken(job);
    return message === null ? [] : [entryProblem(field, job.values[field], message, jobNamed(field))];
  });
}

export function isJobEntry(name: string): name is JobEntry {
  return JOB_ENTRIES.includes(name as JobEntry);
}

function refused(problems: readonly Problem[]): CheckedJob {
  return { job: null, problems: problems.slice(0, MAX_PROBLEMS) };
}
