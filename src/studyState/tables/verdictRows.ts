import {
  type Judgement,
  VERDICT_GROUPS,
  type VerdictGroup,
  type VerdictRow,
} from '../../../shared/verdict/judgement.ts';
import type { Cell, Column, FigureTable, Mark, TableRow } from './table.ts';

/** Every figure by which the candidates are judged. */
export function verdictTable({ rows }: Pick<Judgement, 'rows'>, columns: readonly Column[]): FigureTable {
  const groups = (Object.keys(VERDICT_GROUPS) as VerdictGroup[]).map((group) => ({
    title: VERDICT_GROUPS[group],
    rows: rows.filter((row) => row.group === group).map(tableRow),
  }));
  return { columns, groups: groups.filter((group) => group.rows.length > 0) };
}

function tableRow(row: VerdictRow): TableRow {
  const { id, label, definition, better, asked, cells } = row;
  return {
    id: `verdict-${id}`,
    label,
    definition,
    better,
    asked,
    cells: cells.map(({ text, mark, fails, cause, reason }): Cell => {
      const marks: Mark[] = [...(mark === null ? [] : [mark]), ...(fails ? (['fails'] as const) : [])];
      return { text, marks, cause, reason };
    }),
  };
}
