import { at } from '../core/at.ts';
import type { Travel } from '../core/crossChecks.ts';
import {
  entryFailure,
  entryProblem,
  type Failure,
  failure,
  MAX_PROBLEMS,
  type Problem,
  shown,
} from '../core/problem.ts';
import type { MoveLine } from '../core/scene.ts';
import type { UnitSystem } from '../core/unitSystem.ts';
import { fromSI, toSI, type Unit, unitIn } from '../core/units.ts';
import { checkMoves, MOVE_ENTRIES, type MovePlace } from '../motion/moves.ts';
import { type TimedMove, withLimits, withTimes } from './timedMoves.ts';

/** The units a column may be written in; the first is meant where the list has no header. */
const COLUMN_UNITS: Readonly<Record<ColumnName, readonly [Unit, ...Unit[]]>> = {
  to: ['mm', 'm', 'µm', 'nm', 'in'],
  speed: ['m/s', 'mm/s', 'in/s'],
  acceleration: ['m/s²', 'in/s²'],
  jerk: ['m/s³', 'in/s³'],
  dwell: ['s', 'ms', 'min'],
  time: ['s', 'ms', 'min'],
  force: ['N'],
};

/** `time` stands in place of speed, acceleration and jerk. */
type ColumnName = keyof MoveLine | 'time';

interface Column {
  readonly name: ColumnName;
  readonly unit: Unit;
}

const LONGEST_TEXT = 1_000_000;
const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;
const TIMED_ENTRIES: readonly (keyof TimedMove)[] = ['to', 'time', 'dwell'];

const inFirstUnit = (name: ColumnName): Column => ({ name, unit: COLUMN_UNITS[name][0] });
const PLAIN_ENTRIES = MOVE_ENTRIES.filter((name) => name !== 'force');
const PLAIN_COLUMNS: readonly Column[] = PLAIN_ENTRIES.map(inFirstUnit);
/** Of a move against which the process works, such as a cut between rapid moves; it may be left out. */
const FORCE_COLUMN = inFirstUnit('force');

const title = ({ name, unit }: Column) => `${name} [${unit}]`;

/**
 * Reads a pasted move list: one move per line, columns separated by tabs, semicolons or commas.
 *
 *     to [mm], speed [m/s], acceleration [m/s²], jerk [m/s³], dwell [s]
 *     120, 1, 12, 600, 0.2
 *
 * or, where the time of a move is known and not its limits,
 *
 *     to [in], time [s], dwell [s]
 *
 * A further column, force [N], is the force of the process against each move: a cut has one, a rapid move has 0.
 *
 * The header may order the columns as it likes and names their units; without one, the columns are the five above. Between tabs
 * or semicolons a decimal comma is understood. Empty lines and lines that begin with # are skipped.
 */
export function readMoveList(text: string, p: Travel): { readonly moves: readonly MoveLine[] } | Failure {
  if (text.length > LONGEST_TEXT)
    return failure('', text.length, 'The list is too long: the limit is a million characters.');
  const lines = text
    .split(/\r\n|\r|\n/)
    .map((line, index) => ({ line: line.trim(), place: `line ${index + 1}` }))
    .filter(({ line }) => line !== '' && !line.startsWith('#'));
  if (lines.length === 0) return failure('', text, 'The list is empty. Paste one move per line.');

  const delimiter = ['\t', ';'].find((each) => at(lines, 0).line.includes(each)) ?? ',';
  const cellsOf = (line: string) => line.split(delimiter).map((cell) => cell.trim());
  const first = cellsOf(at(lines, 0).line);
  const hasHeader = !first.some((cell) => /^[-+−.\d]/.test(cell));
  const columns = hasHeader ? readHeader(first) : PLAIN_COLUMNS;
  if ('problems' in columns) return columns;

  const rows = hasHeader ? lines.slice(1) : lines;
  if (rows.length === 0)
    return failure('', text, 'The list has a header but no moves. Paste one move per line.');
  const problems: Problem[] = [];
  const moves = rows.map(({ line, place }) => readRow(cellsOf(line), columns, place, delimiter, problems));
  if (problems.length > 0) return { problems: problems.slice(0, MAX_PROBLEMS) };
  const place: MovePlace = (index, entry) => {
    const line = at(rows, index).place;
    return entry === undefined ? line : `${line}, ${entry}`;
  };
  const limited = isTimed(columns) ? withLimits(moves as unknown as TimedMove[], place) : { moves };
  return 'problems' in limited ? limited : checkMoves(limited.moves, p, place);
}

/** The list as it can be read again, edited in any spreadsheet in between. */
export function writeMoveList(moves: readonly MoveLine[]): string {
  return table(PLAIN_COLUMNS, moves);
}

/** The same with times in place of limits, if it was made of times, in the units of a system. */
export function writeTimedMoveList(moves: readonly MoveLine[], system: UnitSystem): string {
  const inSystem = ({ name, unit }: Column): Column => ({ name, unit: unitIn(system, unit) });
  const timed = withTimes(moves);
  return timed
    ? table(TIMED_ENTRIES.map(inFirstUnit).map(inSystem), timed)
    : table(PLAIN_COLUMNS.map(inSystem), moves);
}

function table(columns: readonly Column[], lines: readonly (MoveLine | TimedMove)[]): string {
  const all = lines.some(({ force }) => force !== undefined) ? [...columns, FORCE_COLUMN] : columns;
  const rows = lines.map((line) =>
    all
      .map(({ name, unit }) => Number(fromSI(line[name as keyof typeof line] ?? 0, unit).toPrecision(12)))
      .join(', '),
  );
  return `${[all.map(title).join(', '), ...rows].join('\n')}\n`;
}

function readRow(
  cells: readonly string[],
  columns: readonly Column[],
  place: string,
  delimiter: string,
  problems: Problem[],
): Record<string, number> {
  if (cells.length !== columns.length) {
    const message = `it has ${cells.length} columns. Enter ${columns.length}: ${columns.map(title).join(', ')}.`;
    problems.push(entryProblem(place, cells.length, message));
    return {};
  }
  return Object.fromEntries(
    columns.map(({ name, unit }, column) => {
      const cell = at(cells, column);
      const text = (delimiter === ',' ? cell : cell.replace(',', '.')).replace('−', '-');
      if (!NUMBER.test(text)) {
        const message = `${shown(cell)} is not a number. Enter a number in ${unit}.`;
        problems.push(entryProblem(`${place}, ${name}`, cell, message));
      }
      return [name, toSI(Number(text), unit)];
    }),
  );
}

function readHeader(cells: readonly string[]): readonly Column[] | Failure {
  const columns: Column[] = [];
  for (const cell of cells) {
    const [name, unit] = splitTitle(cell);
    if (!isColumnName(name) || columns.some((column) => column.name === name)) {
      return entryFailure(
        'header',
        cell,
        `${shown(cell)} is not one of ${PLAIN_COLUMNS.map(title).join(', ')}, each once, ` +
          'or time [s] in place of speed, acceleration and jerk, and force [N] besides.',
      );
    }
    const known = COLUMN_UNITS[name].find((each) => each === unit);
    if (known === undefined) {
      return entryFailure(
        'header',
        cell,
        `${name} needs a unit, one of ${COLUMN_UNITS[name].join(', ')}: write "${title(inFirstUnit(name))}".`,
      );
    }
    columns.push({ name, unit: known });
  }
  const wanted: readonly ColumnName[] = isTimed(columns) ? TIMED_ENTRIES : PLAIN_ENTRIES;
  const twice = columns.find(({ name }) => name !== 'force' && !wanted.includes(name));
  if (twice !== undefined) {
    const message = `time replaces speed, acceleration and jerk. Leave out time or ${title(twice)}.`;
    return entryFailure('header', twice.name, message);
  }
  const missing = wanted.find((name) => !columns.some((column) => column.name === name));
  if (missing === undefined) return columns;
  return entryFailure('header', missing, `the column ${title(inFirstUnit(missing))} is missing.`);
}

/** 'Speed (mm/s)' is speed in mm/s; m/s2, m/s^2 and um are what a keyboard has for m/s², m/s² and µm, and " for in. */
function splitTitle(cell: string): [name: string, unit: string] {
  const [, name = '', unit = ''] = /^([a-z]+)\s*[[(]?\s*([^\])]*?)\s*[\])]?$/i.exec(cell) ?? [];
  return [
    name.toLowerCase(),
    unit
      .replace(/\^?2$/, '²')
      .replace(/\^?3$/, '³')
      .replace(/^[uμ]m$/, 'µm')
      .replace(/^"$/, 'in'),
  ];
}

function isColumnName(name: string): name is ColumnName {
  return Object.hasOwn(COLUMN_UNITS, name);
}

function isTimed(columns: readonly Column[]): boolean {
  return columns.some(({ name }) => name === 'time');
}
