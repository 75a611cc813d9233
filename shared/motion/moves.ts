import { checkNumber } from '../core/check.ts';
import { isInTravel, type Travel, travelRange } from '../core/crossChecks.ts';
import { linear, type NumberRow } from '../core/parameters/row.ts';
import { PARAMETERS } from '../core/parameters/table.ts';
import {
  entryFailure,
  entryProblem,
  type Failure,
  isNot,
  isRecord,
  MAX_PROBLEMS,
  type Problem,
  unknownName,
} from '../core/problem.ts';
import type { MoveLine } from '../core/scene.ts';
import { exactly, sentence } from '../core/sentence.ts';

const MAX_MOVES = 1000;

/** The entries of a move in their usual order, each with the row of the table that limits it. */
export const MOVE_ROWS: Readonly<Record<keyof MoveLine, NumberRow>> = {
  to: PARAMETERS.start,
  speed: PARAMETERS.speed,
  acceleration: PARAMETERS.acceleration,
  jerk: PARAMETERS.jerk,
  dwell: PARAMETERS.dwell,
  force: linear('', 'N', [0, 5000], 0, 'Process force against the move'),
};

export const MOVE_ENTRIES = Object.keys(MOVE_ROWS) as (keyof MoveLine)[];

/** What a line of the list, or an entry of it, is called where the list is written. */
export type MovePlace = (index: number, entry?: string) => string;

const inFile: MovePlace = (index, entry) => `moves[${index}]${entry === undefined ? '' : `.${entry}`}`;

/** Checks a list of moves (SI) against the table and the travel of the axis. */
export function checkMoves(
  input: unknown,
  p: Travel,
  place = inFile,
): { readonly moves: readonly MoveLine[] } | Failure {
  if (!Array.isArray(input)) return entryFailure('moves', input, isNot(input, 'a list of moves'));
  if (input.length > MAX_MOVES) {
    const message = `${input.length} lines are too many. Enter at most ${MAX_MOVES}.`;
    return entryFailure('moves', input.length, message);
  }
  const problems: Problem[] = [];
  const moves: MoveLine[] = [];
  for (const [index, line] of input.entries()) {
    if (problems.length >= MAX_PROBLEMS) break;
    const checked = checkMove(line, p, (entry) => place(index, entry));
    if ('problems' in checked) problems.push(...checked.problems);
    else moves.push(checked);
  }
  return problems.length > 0 ? { problems } : { moves };
}

function checkMove(line: unknown, p: Travel, place: (entry?: string) => string): MoveLine | Failure {
  if (!isRecord(line)) {
    return entryFailure(place(), line, isNot(line, `a move of ${MOVE_ENTRIES.join(', ')}`));
  }
  const stray = Object.keys(line).find((name) => !Object.hasOwn(MOVE_ROWS, name));
  if (stray !== undefined) {
    return { problems: [unknownName(`an entry of ${place()}`, stray, MOVE_ENTRIES, line[stray])] };
  }
  const problems: Problem[] = [];
  const entry = (name: keyof MoveLine): number => {
    const checked = checkNumber(line[name], MOVE_ROWS[name]);
    if ('legal' in checked) return checked.legal;
    problems.push(entryProblem(place(name), line[name], checked.wrong));
    return Number.NaN;
  };
  const force = 'force' in line ? entry('force') : 0;
  const move: MoveLine = {
    to: entry('to'),
    speed: entry('speed'),
    acceleration: entry('acceleration'),
    jerk: entry('jerk'),
    dwell: entry('dwell'),
    ...(force === 0 ? {} : { force }),
  };
  if (problems.length > 0) return { problems };
  if (isInTravel(p, move.to)) return move;
  const message = sentence`${exactly(move.to, 'mm')} is outside the travel, ${travelRange(p)}.
    Stay inside, or widen the travel.`;
  return entryFailure(place('to'), move.to, message);
}
