import { at } from '../../../shared/core/at.ts';
import {
  entryFailure,
  entryProblem,
  type Failure,
  failure,
  MAX_PROBLEMS,
  type Problem,
  shown,
} from '../../../shared/core/problem.ts';
import { type ColumnGuess, guessColumns } from './traceColumns.ts';

/** Rows and columns at most: a minute at 16 kHz of everything a drive can record. */
export const MAX_ROWS = 1_000_000;
const MAX_COLUMNS = 200;

/** A cell that is not a number: the first of its column, present position, and how many there are. */
interface BadCell {
  readonly line: number;
  readonly text: string;
  readonly count: number;
}

export interface TraceColumn {
  readonly name: string;
  readonly guess: ColumnGuess;
  /** As written, in the unit of the column; NaN where a cell is empty or not a number. */
  readonly values: Float64Array;
  readonly bad: BadCell | null;
}

/** A file of columns of numbers. */
export interface TraceTable {
  readonly columns: readonly TraceColumn[];
  /** Line of the file on which each row stands, counted from 1. */
  readonly lines: Uint32Array;
}

const MISSING = /^(nan|null|n\/?a|-+)?$/i;

/**
 * Reads a recording: one sample a line, columns parted by tab, semicolon or comma, whichever the first line has.
 *
 * A header is optional, and may go on in a second line with the units. Names and cells may be quoted. Lines that begin with # or % are
 * comments. Where the comma does not part the columns it may be the decimal sign. Empty cells are gaps. A cell that is no number spoils
 * only its own column.
 */
export function readTraceTable(text: string): TraceTable | Failure {
  const lines = new Lines(text);
  const first = lines.next();
  if (first === null)
    return failure('', text.length, 'The file is empty. Choose one with a sample on each line.');
  const delimiter = ['\t', ';'].find((each) => first.includes(each)) ?? ',';
  const cellsOf = splitter(delimiter);
  const head = cellsOf(first);
  if (head.length > MAX_COLUMNS) {
    const message = `${head.length} columns are too many. The limit is ${MAX_COLUMNS}.`;
    return entryFailure(`line ${lines.line}`, head.length, message);
  }
  const isHeader = !head.some((cell) => isNumber(cell));
  let names = isHeader ? head : head.map((_, k) => `column ${k + 1}`);
  let next = isHeader ? lines.next() : first;
  if (isHeader && next !== null) {
    const units = cellsOf(next);
    if (units.length === head.length && !units.some((cell) => isNumber(cell) || cell.length > 12)) {
      names = head.map((name, k) =>
        units[k] === '' ? name : `${name} [${at(units, k).replace(/[[\]()]/g, '')}]`,
      );
      next = lines.next();
    }
  }
  const rows = new Rows(names.length, delimiter !== ',', text);
  for (; next !== null; next = lines.next()) {
    if (rows.count === MAX_ROWS) {
      const message = `more than ${MAX_ROWS} rows. Cut the recording, or export it at a lower rate.`;
      return entryFailure(`line ${lines.line}`, MAX_ROWS, message);
    }
    rows.take(cellsOf(next), lines.line);
    if (rows.problems.length >= MAX_PROBLEMS) break;
  }
  if (rows.problems.length > 0) return { problems: rows.problems };
  if (rows.count === 0) return failure('', text.length, 'The file has a header but no samples.');
  return rows.table(names);
}

/** The lines that count, one after the other. */
class Lines {
  /** Number of the last line given, from 1. */
  line = 0;
  #at = 0;
  readonly #end: string;
  readonly #text: string;

  constructor(text: string) {
    this.#text = text;
    if (text.startsWith('\ufeff')) this.#at = 1;
    this.#end = text.includes('\n') ? '\n' : '\r';
  }

  next(): string | null {
    while (this.#at < this.#text.length) {
      const stop = this.#text.indexOf(this.#end, this.#at);
      const end = stop < 0 ? this.#text.length : stop;
      const line = this.#text.slice(this.#at, end).replace(/\r$/, '');
      this.#at = end + 1;
      this.line++;
      if (/^\s*[^\s#%]/.test(line)) return line;
    }
    return null;
  }
}

/** Cells of a line, trimmed and without their quotes. A doubled quote inside quotes is one (RFC 4180). */
function splitter(delimiter: string): (line: string) => string[] {
  return (line) => {
    if (!line.includes('"')) return line.split(delimiter).map((cell) => cell.trim());
    const cells: string[] = [];
    let cell = '';
    let quoted = false;
    for (let k = 0; k < line.length; k++) {
      const c = at(line, k);
      if (c === '"' && quoted && line[k + 1] === '"') cell += line[k++];
      else if (c === '"') quoted = !quoted;
      else if (c === delimiter && !quoted) {
        cells.push(cell.trim());
        cell = '';
      } else cell += c;
    }
    cells.push(cell.trim());
    return cells;
  };
}

/** Like 1, −2.5, .5, 3e-4 or 1,5; what looks like a number but is none is found when its value is read. */
function isNumber(cell: string): boolean {
  return /^[-+−]?[.,]?\d/.test(cell);
}

/** Collects the rows of a table. */
class Rows {
  count = 0;
  readonly problems: Problem[] = [];
  readonly #values: Float64Array[];
  readonly #lines: Uint32Array;
  readonly #bad: (BadCell | null)[];
  readonly #width: number;
  readonly #decimalComma: boolean;

  constructor(width: number, decimalComma: boolean, text: string) {
    this.#width = width;
    this.#decimalComma = decimalComma;
    const max = Math.min(MAX_ROWS, lineCount(text));
    this.#values = Array.from({ length: width }, () => new Float64Array(max));
    this.#lines = new Uint32Array(max);
    this.#bad = new Array(width).fill(null);
  }

  take(cells: readonly string[], line: number): void {
    const width = this.#width;
    const isLonger = cells.length === width + 1 && cells[width] === '';
    if (cells.length !== width && !isLonger) {
      const message = `it has ${cells.length} columns, and the first line has ${width}. Give every line the same number.`;
      this.problems.push(entryProblem(`line ${line}`, cells.length, message));
      return;
    }
    for (let k = 0; k < width; k++) at(this.#values, k)[this.count] = this.#number(at(cells, k), k, line);
    this.#lines[this.count++] = line;
  }

  table(names: readonly string[]): TraceTable {
    const guesses = guessColumns(names);
    return {
      columns: names.map((name, k) => ({
        name,
        guess: at(guesses, k),
        values: at(this.#values, k).subarray(0, this.count),
        bad: at(this.#bad, k),
      })),
      lines: this.#lines.subarray(0, this.count),
    };
  }

  #number(cell: string, column: number, line: number): number {
    if (MISSING.test(cell)) return Number.NaN;
    const value = Number((this.#decimalComma ? cell.replace(',', '.') : cell).replace('−', '-'));
    if (Number.isFinite(value)) return value;
    const before = this.#bad[column];
    this.#bad[column] = before
      ? { ...before, count: before.count + 1 }
      : { line, text: shown(cell), count: 1 };
    return Number.NaN;
  }
}

function lineCount(text: string): number {
  const end = text.includes('\n') ? '\n' : '\r';
  let count = 1;
  for (let at = text.indexOf(end); at >= 0; at = text.indexOf(end, at + 1)) count++;
  return count;
}
