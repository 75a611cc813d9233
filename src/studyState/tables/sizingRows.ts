import { ranged } from '../../../shared/core/format.ts';
import { printedUnit } from '../../../shared/core/units.ts';
import type { Sizing, SizingFigure, Standing } from '../../../shared/sizing/sizing.ts';
import type { Calculation, Cell, FigureTable, Mark, TableRow } from './table.ts';

interface Sized {
  readonly letter: string;
  readonly title: string;
  readonly sizing: Sizing;
}

const MARK: Readonly<Record<Standing, Mark | null>> = {
  good: 'within',
  close: 'close',
  beyond: 'beyond',
  plain: null,
};

/** What belongs together, in the order in which an axis is sized. */
const GROUPS: readonly (readonly [title: string, ids: readonly string[]])[] = [
  ['Motion and mass', ['speed', 'acceleration', 'dutyFactor', 'mass', 'inertiaMatch']],
  ['Force', ['friction', 'peakForce', 'peakUtilisation', 'rmsForce', 'continuousUtilisation']],
  ['Current and voltage', ['peakCurrent', 'currentHeadroom', 'rmsCurrent', 'voltage', 'voltageHeadroom']],
  ['Heat and energy', ['windingTemperature', 'copperLoss', 'energy']],
  ['Amplifier and supply', ['peakPower', 'brakingEnergy', 'brakeResistor']],
  [
    'Screw',
    [
      'peakTorque',
      'rmsTorque',
      'screwSpeed',
      'ballSpeed',
      'nutLife',
      'screwLoad',
      'slenderness',
      'growthPerKelvin',
      'screwBearingLoad',
    ],
  ],
  ['Held against gravity', ['stallUtilisation', 'brakeForce', 'drop']],
  ['Space', ['installedLength', 'trackLength', 'trackMass', 'shaftSag']],
  ['Stiffness and encoder', ['stiffness', 'resolution']],
];

/** Every figure of the sizing, with its calculation. */
export function sizingTable(candidates: readonly Sized[]): FigureTable {
  const groups = GROUPS.map(([title, ids]) => ({
    title,
    rows: ids.flatMap((id) => sizingRow(id, candidates) ?? []),
  }));
  return { columns: candidates, groups: groups.filter(({ rows }) => rows.length > 0) };
}

/** What decides soonest whether a drive can do a job at all. */
const FIRST = ['continuousUtilisation', 'peakUtilisation', 'windingTemperature', 'voltageHeadroom'];

/** The first answer to a job, of drives that are not simulated yet: what their motors are used by, and whether sizing rules them out. */
export function firstTable(candidates: readonly Sized[]): FigureTable {
  const figures = FIRST.flatMap((id) => sizingRow(id, candidates) ?? []);
  const answer: TableRow = {
    id: 'sizing-answer',
    label: 'By sizing',
    definition:
      'A drive that goes beyond a limit of the calculation is ruled out; any other has still to be simulated.',
    cells: candidates.map(({ sizing: { passes, reasons } }) =>
      passes ? { text: 'not ruled out' } : { text: 'ruled out', marks: ['fails'], reason: reasons.join(' ') },
    ),
  };
  const rows = [answer, ...figures].map((row) => ({ ...row, id: `first-${row.id}` }));
  return { columns: candidates, groups: [{ rows }] };
}

function sizingRow(id: string, candidates: readonly Sized[]): TableRow | null {
  const figures = candidates.map(({ letter, sizing }) => ({
    letter,
    figure: sizing.figures.find((each) => each.id === id),
  }));
  const found = figures.flatMap(({ letter, figure }) => (figure ? { letter, figure } : []));
  if (found.length === 0) return null;
  return {
    id: `sizing-${id}`,
    label: [...new Set(found.map(({ figure }) => `${figure.label} ${figure.symbol}`))].join(' · '),
    definition: '',
    calculations: calculations(found),
    cells: figures.map(({ figure }) => (figure ? sizingCell(figure) : { text: 'none', isAbsent: true })),
  };
}

function sizingCell({ value, unit, limit, standing }: SizingFigure): Cell {
  const text = (si: number) => (Number.isFinite(si) ? shown(si, unit) : 'no end');
  const mark = MARK[standing];
  return {
    text: text(value),
    marks: mark === null ? [] : [mark],
    ...(limit && { limit: `${limit.side === 'max' ? 'at most' : 'at least'} ${text(limit.value)}` }),
  };
}

function shown(value: number, unit: SizingFigure['unit']): string {
  return value === 0 ? `0 ${printedUnit(unit)}` : ranged(value, unit);
}

/** Candidates that share formula and note stand together. */
function calculations(
  found: readonly { readonly letter: string; readonly figure: SizingFigure }[],
): Calculation[] {
  const groups = new Map<string, Calculation>();
  for (const { letter, figure } of found) {
    const { formula, note, numbers } = figure;
    const key = `${formula}\n${note}`;
    const before = groups.get(key)?.numbers ?? [];
    groups.set(key, { formula, note, numbers: [...before, { letter, text: numbers }] });
  }
  return [...groups.values()];
}
