import { checkNumber } from '../core/check.ts';
import { isInTravel, type Travel, travelText } from '../core/crossChecks.ts';
import { shortest } from '../core/format.ts';
import type { NumberRow } from '../core/parameters/row.ts';
import { PARAMETERS } from '../core/parameters/table.ts';
import {
  type Failure,
  failure,
  isRecord,
  MAX_PROBLEMS,
  type Problem,
  shown,
  unknownName,
} from '../core/problem.ts';
import type { MoveLine } from '../core/scene.ts';

const MAX_MOVES = 1000;

/** The entries of a move in their usual order, each with the row of the table that limits it. */
export const MOVE_ROWS: Readonly<Record<keyof MoveLine, NumberRow>> = {
  to: PARAMETERS.start,
  speed: PARAMETERS.speed,
  acceleration: PARAMETERS.acceleration,
  jerk: PARAMETERS.jerk,
  dwell: PARAMETERS.dwell,
};

export const MOVE_ENTRIES = Object.keys(MOVE_ROWS) as (keyof MoveLine)[];

/** Checks a list of moves (SI) against the table and the travel of the axis. `place` names a line in the messages. */
export function checkMoves(
  input: unknown,
  p: Travel,
  place = (index: number) => `moves[${index}]`,
): { readonly moves: readonly MoveLine[] } | Failure {
  if (!Array.isArray(input)) return failure('moves', input, `moves: ${shown(input)} is not a list of moves.`);
  if (input.length > MAX_MOVES) {
    return failure(
      'moves',
      input.length,
      `moves: ${input.length} lines are too many. Give at most ${MAX_MOVES}.`,
    );
  }
  const problems: Problem[] = [];
  const moves: MoveLine[] = [];
  for (const [index, line] of input.entries()) {
    if (problems.length >= MAX_PROBLEMS) break;
    const checked = checkMove(line, p, place(index));
    if ('problems' in checked) problems.push(...checked.problems);
    else moves.push(checked);
  }
  return problems.length > 0 ? { problems } : { moves };
}

function checkMove(line: unknown, p: Travel, place: string): MoveLine | Failure {
  if (!isRecord(line)) {
    return failure(place, line, `${place}: ${shown(line)} is not a move of ${MOVE_ENTRIES.join(', ')}.`);
  }
  const stray = Object.keys(line).find((name) => !Object.hasOwn(MOVE_ROWS, name));
  if (stray !== undefined) {
    return { problems: [unknownName(`an entry of ${place}`, stray, MOVE_ENTRIES, line[stray])] };
  }
  const problems: Problem[] = [];
  const entry = (name: keyof MoveLine): number => {
    const checked = checkNumber(line[name], MOVE_ROWS[name]);
    if ('legal' in checked) return checked.legal;
    const field = `${place}.${name}`;
    problems.push({ field, value: line[name], message: `${field}: ${checked.wrong}` });
    return Number.NaN;
  };
  const move: MoveLine = {
    to: entry('to'),
    speed: entry('speed'),
    acceleration: entry('acceleration'),
    jerk: entry('jerk'),
    dwell: entry('dwell'),
  };
  if (problems.length > 0) return { problems };
  if (isInTravel(p, move.to)) return move;
  return failure(
    `${place}.to`,
    move.to,
    `${place}.to: ${shortest(move.to, 'mm')} lies outside the travel, ${travelText(p)}. Stay inside, or widen the travel.`,
  );
}
