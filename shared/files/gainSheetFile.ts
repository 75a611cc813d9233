import { at } from '../core/at.ts';
import type { ParameterChanges, Parameters } from '../core/parameters/table.ts';
import { entryFailure, type Failure, failure, isRecord, shown } from '../core/problem.ts';
import { checkTuning } from '../core/tuning.ts';
import { parameterValue } from '../sheet/gainRows.ts';
import { GAIN_SHEET_VERSION, type GainSheet } from '../sheet/gainSheet.ts';
import type { SheetRow } from '../sheet/row.ts';
import { readCsv, writeCsv } from './csv.ts';
import { withFiltersOfToday } from './formerFilters.ts';
import { openFile } from './jsonFile.ts';

/** What was read, still to be laid over the parameters it was checked with. */
export type GainsResult = { readonly changes: ParameterChanges } | Failure;

const COLUMNS = ['section', 'quantity', 'symbol', 'value', 'unit', 'how', 'parameter'] as const;
const SEPARATORS = [',', ';', '\t'];
const NUMBER = /^[-+−]?(\d+\.?\d*|\.\d+)(e[-+−]?\d+)?$/i;

export function writeGainSheet(sheet: GainSheet): string {
  return `${JSON.stringify(sheet, null, 1)}\n`;
}

/**
 * The sheet as a table: a header, then one line a value. A line that names a parameter is read back; the text of its value has every
 * digit. No line begins with what a spreadsheet would take for a formula.
 */
export function writeGainSheetCsv(sheet: GainSheet): string {
  const line = (section: string, row: SheetRow): string[] => [
    section,
    row.label,
    row.symbol,
    String(row.value),
    row.unit,
    row.text === undefined ? row.how : `${row.text}. ${row.how}`,
    row.parameter ?? '',
  ];
  const notes = (section: string, texts: readonly string[]) =>
    texts.map((text) => [section, text, '', '', '', '', '']);
  return writeCsv([
    COLUMNS,
    ...notes('Gain sheet', [`${sheet.madeBy}: ${sheet.title}`]),
    ...notes('Gain sheet', [
      'Only lines with a name in the column "parameter" are read back. All others are calculated from them.',
    ]),
    ...notes('Warning', sheet.warnings),
    ...notes('Caution', sheet.cautions),
    ...sheet.sections.flatMap(({ title, text, rows }) => [
      ...notes(title, text),
      ...rows.map((row) => line(title, row)),
    ]),
    ...sheet.scaled.flatMap(({ forms }) => forms.map((row) => line('Scaled gains', row))),
    ...notes('Assumption', sheet.assumptions),
  ]);
}

/** Reads a gain sheet in either of its forms, JSON or CSV, against the parameters it will be laid over. Total. */
export function gainsFromSheet(input: unknown, base: Parameters): GainsResult {
  return typeof input === 'string' && !/^\s*[{[]/.test(input)
    ? gainsFromCsv(input, base)
    : gainsFromJson(input, base);
}

function gainsFromJson(input: unknown, base: Parameters): GainsResult {
  const opened = openFile(input, 'gain sheet', GAIN_SHEET_VERSION);
  if ('problems' in opened) return opened;
  const { parameters } = opened.entries;
  return checkTuning(isRecord(parameters) ? withFiltersOfToday(parameters) : parameters, base);
}

function gainsFromCsv(text: string, base: Parameters): GainsResult {
  const separator = SEPARATORS.find((each) => readCsv(firstLine(text), each)[0]?.includes('parameter'));
  if (separator === undefined) {
    return failure(
      'header',
      shown(firstLine(text)),
      `This is not a gain sheet: its first line, ${shown(firstLine(text))}, should name the columns ${COLUMNS.join(', ')}.`,
    );
  }
  const [header = [], ...rows] = readCsv(text, separator);
  const [valueAt, parameterAt] = [header.indexOf('value'), header.indexOf('parameter')];
  if (valueAt < 0) return entryFailure('header', header.join(', '), 'the column value is missing.');
  const input: Record<string, unknown> = {};
  for (const row of rows) {
    const name = row[parameterAt]?.trim();
    if (!name) continue;
    if (Object.hasOwn(input, name)) return entryFailure(name, row[valueAt], 'it is in two lines. Keep one.');
    input[name] = parameterValue(name, cellValue(row[valueAt]?.trim() ?? '', separator));
  }
  return checkTuning(withFiltersOfToday(input), base);
}

/** A decimal comma is accepted where commas do not separate cells. */
function cellValue(cell: string, separator: string): unknown {
  const text = (separator === ',' ? cell : cell.replace(',', '.')).replaceAll('−', '-');
  return NUMBER.test(text) ? Number(text) : cell;
}

function firstLine(text: string): string {
  return at(text.slice(0, 1000).split(/[\r\n]/, 1), 0);
}
