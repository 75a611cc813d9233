import { at } from '../../../shared/core/at.ts';
import {
  entryFailure,
  entryProblem,
  type Failure,
  failure,
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
  /** Line of the file with the names of the columns, counted from 1; null without one. */
  readonly headerLine: number | null;
  /** Line of the file on which each row stands, counted from 1. */
  readonly lines: Uint32Array;
}

const MISSING = /^(nan|null|n\/?a|-+)?$/i;

/**
 * Reads a recording: one sample a line, columns separated by tab, semicolon or comma.
 *
 * What stands above the samples is skipped as a preamble, but for the header, which is the line above the first samples, or line
 * `headerLine`. The header is optional, and may go on in a second line with the units. Names and cells may be quoted. Lines that begin
 * with # or % are comments. Where the comma does not separate the columns it may be the decimal sign. Empty cells are gaps. A cell that
 * is not a number spoils only its own column.
 */
export function readTraceTable(text: string, headerLine?: number): TraceTable | Failure {
  const start = headerLine === undefined ? findStart(text) : startAt(text, headerLine);
  if (start === null)
    return failure('', text.length, 'The file is empty. Choose one with a sample on each line.');
  const { delimiter } = start;
  const lines = new Lines(text);
  const first = lines.skipTo(start.line);
  if (first === null) {
    const message = `the file has no line ${start.line}. Enter the number of the line with the names of the columns.`;
    return entryFailure('Header', headerLine, message);
  }
  const cellsOf = splitter(delimiter);
  const head = cellsOf(first);
  if (head.length > MAX_COLUMNS) {
    const message = `${head.length} columns are too many. The limit is ${MAX_COLUMNS}.`;
    return entryFailure(`line ${lines.line}`, head.length, message);
  }
  const isHeader = headerLine !== undefined || !head.some((cell) => isNumber(cell));
  const header = isHeader ? lines.line : null;
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
  }
  if (rows.problem) return { problems: [rows.problem] };
  if (rows.count === 0) return failure('', text.length, 'The file has a header but no samples.');
  return rows.table(names, header);
}

/** Where the table begins: its header, or its first samples without one; and what separates its columns. */
interface Start {
  readonly line: number;
  readonly delimiter: string;
}

const DELIMITERS = ['\t', ';', ','] as const;
/** Lines that are searched for the first samples, and samples in a row that make a table. */
const LONGEST_PREAMBLE = 400;
const ALIKE = 3;

/** The first lines of a table of numbers, whatever stands above; else the first line that counts. */
function findStart(text: string): Start | null {
  const found: { readonly line: number; readonly text: string }[] = [];
  const lines = new Lines(text);
  for (let next = lines.next(); next !== null && found.length < LONGEST_PREAMBLE; next = lines.next())
    found.push({ line: lines.line, text: next });
  const [first] = found;
  if (first === undefined) return null;
  for (const delimiter of DELIMITERS) {
    const cellsOf = splitter(delimiter);
    const cells = found.map((each) => cellsOf(each.text));
    const begin = cells.findIndex((_, k) =>
      isTable(cells.slice(k, k + ALIKE), k > 1 ? ALIKE : cells.length - k),
    );
    if (begin < 0) continue;
    const samples = at(cells, begin);
    // Some recorders end every line of samples with a delimiter.
    const widths = samples.at(-1) === '' ? [samples.length, samples.length - 1] : [samples.length];
    const isName = (k: number) =>
      k >= 0 && widths.includes(at(cells, k).length) && !at(cells, k).some((cell) => isNumber(cell));
    // Names, and perhaps units beneath them.
    const header = isName(begin - 2) && isName(begin - 1) ? begin - 2 : isName(begin - 1) ? begin - 1 : begin;
    return { line: at(found, header).line, delimiter };
  }
  return { line: first.line, delimiter: delimiterOf(first.text) };
}

/** At least `fewest` lines, or three, of equal width and of numbers. */
function isTable(rows: readonly (readonly string[])[], fewest: number): boolean {
  const width = rows[0]?.length ?? 0;
  const isSample = (row: readonly string[]) =>
    row.length === width && row.filter((cell) => isNumber(cell) || MISSING.test(cell)).length === width;
  return (
    width > 1 && rows.length >= Math.min(ALIKE, fewest) && rows.every(isSample) && rows.flat().some(isNumber)
  );
}

function startAt(text: string, line: number): Start | null {
  const lines = new Lines(text);
  const header = lines.skipTo(line);
  return { line, delimiter: delimiterOf(header ?? '') };
}

function delimiterOf(line: string): string {
  return ['\t', ';'].find((each) => line.includes(each)) ?? ',';
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

  /** The line with this number, or the first after it that counts. */
  skipTo(line: number): string | null {
    let next = this.next();
    while (next !== null && this.line < line) next = this.next();
    return next;
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
  #uneven: { readonly line: number; readonly columns: number; count: number } | null = null;
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
      this.#uneven ??= { line, columns: cells.length, count: 0 };
      this.#uneven.count++;
      return;
    }
    for (let k = 0; k < width; k++) at(this.#values, k)[this.count] = this.#number(at(cells, k), k, line);
    this.#lines[this.count++] = line;
  }

  /** Lines that do not have as many columns as the first, all in one message. */
  get problem(): Problem | null {
    if (this.#uneven === null) return null;
    const { line, columns, count } = this.#uneven;
    const more = count > 1 ? ` So it is in ${count - 1} more lines.` : '';
    const message = `it has ${columns} columns, and the first line has ${this.#width}.${more} Give every line the same number, or state which line is the header.`;
    return entryProblem(`line ${line}`, columns, message);
  }

  table(names: readonly string[], headerLine: number | null): TraceTable {
    const guesses = guessColumns(names);
    return {
      headerLine,
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
