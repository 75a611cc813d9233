import { at } from '../../../shared/core/at.ts';
import {
  entryFailure,
  entryProblem,
  type Failure,
  type Problem,
  problem,
  shown,
} from '../../../shared/core/problem.ts';
import { toSI, type Unit } from '../../../shared/core/units.ts';
import {
  TRACE_LABELS,
  TRACE_QUANTITIES,
  type Trace,
  type TraceQuantity,
} from '../../../shared/protocol/trace.ts';
import { gridOf } from './resample.ts';
import { TRACE_UNITS, type TraceUnit } from './traceColumns.ts';
import { MAX_ROWS, type TraceColumn, type TraceTable } from './traceTable.ts';

/** Which column holds a quantity, counted from 0, and in which unit. */
export interface ColumnUse {
  readonly column: number;
  readonly unit: TraceUnit;
  /** A current in ampere rms; otherwise it is an amplitude. */
  readonly rms?: boolean;
}

/** What encoder counts (m) and the rated current of the drive (A, amplitude) stand for. */
export interface TraceScales {
  readonly count: number;
  readonly ratedCurrent: number;
}

/** Time is a column, or the rows come at a rate, Hz. Of the two currents one is enough. */
export type TraceMapping = {
  readonly [Q in Exclude<TraceQuantity, 'time'>]?: ColumnUse;
} & { readonly time?: ColumnUse | { readonly rate: number } };

/** Rows from which something can be told at all, and rates that a drive may be recorded at, Hz. */
const FEWEST_ROWS = 50;
const RATES = [10, 1e6] as const;

/** The mapping that the titles of the columns suggest: the first column of each quantity. A person may correct it. */
export function suggestMapping({ columns }: TraceTable): TraceMapping {
  const mapping: Partial<Record<TraceQuantity, ColumnUse>> = {};
  columns.forEach(({ guess: { quantity, unit, rms } }, column) => {
    if (quantity !== null) mapping[quantity] ??= { column, unit: unit ?? at(TRACE_UNITS[quantity], 0), rms };
  });
  return mapping;
}

/** The trace that a table holds under a mapping: in SI, on an even grid of time. */
export function mapTrace(table: TraceTable, mapping: TraceMapping, scales: TraceScales): Trace | Failure {
  const problems: Problem[] = [];
  for (const quantity of TRACE_QUANTITIES) {
    const use = mapping[quantity];
    if (use && 'column' in use) problems.push(...checkUse(table, quantity, use, scales));
  }
  if (!mapping.position)
    problems.push(missing('position', 'State which column holds the position at the encoder.'));
  if (!mapping.time)
    problems.push(missing('time', 'State which column holds the time, or give the sample rate.'));
  if (!mapping.current && !mapping.currentCommand) {
    problems.push(missing('current', 'State which column holds the force current, or at least its command.'));
  }
  if (table.lines.length < FEWEST_ROWS) {
    const message = `The recording has ${table.lines.length} samples. Give at least ${FEWEST_ROWS}.`;
    problems.push(problem('time', table.lines.length, message));
  }
  if (problems.length > 0) return { problems };

  const times = timesOf(table, mapping.time!);
  if ('problems' in times) return times;
  const grid = gridOf(times.values, times.digit);
  if (!(grid.period <= 1 / RATES[0] && grid.period >= 1 / RATES[1])) {
    const rate = 1 / grid.period;
    const message = `${rate.toPrecision(4)} samples per second. Recordings of ${RATES[0]} to ${RATES[1]} per second can be read; check the unit of the time.`;
    return entryFailure('time', rate, message);
  }
  if (grid.count > MAX_ROWS + table.lines.length) {
    const seconds = (grid.count * grid.period).toPrecision(4);
    const message = `the recording spans ${seconds} s with ${grid.gaps.length} gaps. Cut it into pieces.`;
    return entryFailure('time', seconds, message);
  }
  const series = (quantity: Exclude<TraceQuantity, 'time'>) => {
    const use = mapping[quantity];
    if (!use) return null;
    const factor = factorOf(use, scales);
    return grid.place(at(table.columns, use.column).values.map((value) => value * factor));
  };
  return {
    period: grid.period,
    start: grid.start,
    position: series('position')!,
    current: series('current'),
    currentCommand: series('currentCommand'),
    setpoint: series('setpoint'),
    motorPosition: series('motorPosition'),
    tablePosition: series('tablePosition'),
    gaps: grid.gaps,
    resampled: grid.kind,
  };
}

function missing(quantity: TraceQuantity, message: string): Problem {
  return entryProblem(quantity, undefined, message);
}

/** SI value of 1 in a column. A current in per cent of the rated one is as much an amplitude as that is. */
function factorOf({ unit, rms }: ColumnUse, { count, ratedCurrent }: TraceScales): number {
  if (unit === 'counts') return count;
  if (unit === '% of rated') return 0.01 * ratedCurrent;
  return toSI(1, unit) * (rms ? Math.SQRT2 : 1);
}

function checkUse(
  table: TraceTable,
  quantity: TraceQuantity,
  use: ColumnUse,
  { count, ratedCurrent }: TraceScales,
): Problem[] {
  const column = table.columns[use.column];
  const label = TRACE_LABELS[quantity];
  if (!column) {
    const message = `there is no column ${shown(use.column)}. Give one of 0 to ${table.columns.length - 1}.`;
    return [entryProblem(quantity, use.column, message, label)];
  }
  const problems: Problem[] = [];
  if (!TRACE_UNITS[quantity].includes(use.unit)) {
    const message = `"${use.unit}" is not a unit for it. Give one of ${TRACE_UNITS[quantity].join(', ')}.`;
    problems.push(entryProblem(quantity, use.unit, message, label));
  }
  if (use.unit === 'counts' && !(count > 0)) {
    problems.push(entryProblem(quantity, count, 'one count needs a length above 0. Enter it.', label));
  }
  if (use.unit === '% of rated' && !(ratedCurrent > 0)) {
    problems.push(
      entryProblem(quantity, ratedCurrent, 'the rated current must be above 0. Enter it.', label),
    );
  }
  const { bad, name } = column;
  if (bad) {
    const more = bad.count > 1 ? ` So are ${bad.count - 1} more below it.` : '';
    const message = `${bad.text} is not a number.${more} Correct it, or leave the cell empty.`;
    problems.push(entryProblem(`line ${bad.line}, ${name}`, bad.text, message));
  }
  return problems;
}

/** Time of every row, s, rising, and the last digit it is written with. */
function timesOf(
  { columns, lines }: TraceTable,
  time: NonNullable<TraceMapping['time']>,
): { readonly values: Float64Array; readonly digit: number } | Failure {
  if ('rate' in time) {
    const { rate } = time;
    if (!(rate >= RATES[0] && rate <= RATES[1])) {
      const message = `${shown(rate)} Hz is not a sample rate. Enter ${RATES[0]} to ${RATES[1]} Hz.`;
      return entryFailure('time', rate, message);
    }
    return { values: Float64Array.from(lines, (_, k) => k / rate), digit: 0 };
  }
  const column = at(columns, time.column);
  const wrong = firstNotRising(column);
  if (wrong !== null) {
    const { name, values } = column;
    const place = `line ${lines[wrong]}, ${name}`;
    const reason = Number.isNaN(at(values, wrong))
      ? 'the time is missing'
      : `the time ${values[wrong]} is not later than ${values[wrong - 1]} in the row before`;
    return entryFailure(place, values[wrong], `${reason}. Time must increase from row to row.`);
  }
  const factor = toSI(1, time.unit as Unit);
  return { values: column.values.map((value) => value * factor), digit: lastDigit(column.values) * factor };
}

function firstNotRising({ values }: TraceColumn): number | null {
  for (let k = 0; k < values.length; k++) {
    if (Number.isNaN(at(values, k)) || (k > 0 && at(values, k) <= at(values, k - 1))) return k;
  }
  return null;
}

/** The power of ten that all values are whole multiples of, to the rounding of doubles; 0 when there is none worth the name. */
function lastDigit(values: Float64Array): number {
  for (let decimals = 0; decimals <= 9; decimals++) {
    const scale = 10 ** decimals;
    const isWhole = (value: number) => Math.abs(value * scale - Math.round(value * scale)) < 1e-5;
    if (values.every(isWhole)) return 1 / scale;
  }
  return 0;
}
