import { ranged } from '../../../shared/core/format.ts';
import { type UnitSystem, unitIn } from '../../../shared/core/units.ts';
import {
  type Judgement,
  VERDICT_GROUPS,
  type VerdictCell,
  type VerdictGroup,
  type VerdictRow,
} from '../../../shared/verdict/judgement.ts';
import type { Cell, Column, FigureTable, Mark, TableRow } from './table.ts';

/** Every figure by which the candidates are judged. */
export function verdictTable(
  { rows }: Pick<Judgement, 'rows'>,
  columns: readonly Column[],
  units: UnitSystem,
): FigureTable {
  const groups = (Object.keys(VERDICT_GROUPS) as VerdictGroup[]).map((group) => ({
    title: VERDICT_GROUPS[group],
    rows: rows.filter((row) => row.group === group).map((row) => tableRow(row, units)),
  }));
  return { columns, groups: groups.filter((group) => group.rows.length > 0) };
}

function tableRow(row: VerdictRow, units: UnitSystem): TableRow {
  const { id, label, definition, better, cells } = row;
  return {
    id: `verdict-${id}`,
    label,
    definition,
    better,
    asked: askedIn(units, row),
    cells: cells.map((cell): Cell => {
      const { mark, fails, cause } = cell;
      const marks: Mark[] = [...(mark === null ? [] : [mark]), ...(fails ? (['fails'] as const) : [])];
      return { text: textIn(units, row, cell), marks, cause, reason: reasonIn(units, row, cell) };
    }),
  };
}

/** The figure in the units that are read, and its limit; what else is said of it in words is metric. */
function textIn(units: UnitSystem, { unit }: VerdictRow, { value, text }: VerdictCell): string {
  const shown = unitIn(units, unit);
  return value === null || shown === unit ? text : ranged(value, shown);
}

function askedIn(units: UnitSystem, { unit, asked, limit }: VerdictRow): string | null {
  const shown = unitIn(units, unit);
  return limit === undefined || shown === unit ? asked : `at most ${ranged(limit, shown)}`;
}

function reasonIn(
  units: UnitSystem,
  { unit, limit }: VerdictRow,
  { value, reason }: VerdictCell,
): string | null {
  const shown = unitIn(units, unit);
  if (limit === undefined || value === null || reason === null || shown === unit) return reason;
  const above = ranged(value, shown) === ranged(limit, shown) ? 'just above' : 'above';
  return `${above} ${ranged(limit, shown)}`;
}
