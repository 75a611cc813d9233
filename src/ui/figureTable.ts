import { element } from './dom.ts';

/** What stands in a cell, or the cell itself where it has attributes or changes later. */
type Cell = string | Node;

export interface FigureRow {
  readonly head: Cell;
  readonly cells: readonly Cell[];
  readonly title?: string;
  readonly 'data-verdict'?: string;
  /** A row of its own beneath, across all columns. */
  readonly details?: HTMLTableRowElement;
}

/** Rows that belong together, under what they have in common. */
interface FigureGroup {
  readonly title?: string | undefined;
  readonly rows: readonly FigureRow[];
}

interface FigureTable {
  readonly class: string;
  readonly caption?: Cell;
  /** Heads of the columns, that of the row heads first; a table without them has no head. */
  readonly columns?: readonly Cell[];
  readonly rows?: readonly FigureRow[];
  readonly groups?: readonly FigureGroup[];
  readonly foot?: readonly FigureRow[];
}

/** Figures in rows and columns. Every table of the page is made here, so that each has its heads where a screen reader looks. */
export function figureTable(of: FigureTable): HTMLTableElement {
  const { caption, columns, rows, groups = [], foot } = of;
  const table = element('table', { class: of.class });
  if (caption !== undefined)
    table.append(caption instanceof HTMLElement ? caption : element('caption', {}, caption));
  if (columns)
    table.append(element('thead', {}, element('tr', {}, ...columns.map((cell) => head(cell, 'col')))));
  if (rows) table.append(element('tbody', {}, ...rows.flatMap(tableRows)));
  for (const group of groups) table.append(groupBody(group, columns?.length ?? 1));
  if (foot) table.append(element('tfoot', {}, ...foot.flatMap(tableRows)));
  return table;
}

function groupBody({ title, rows }: FigureGroup, columns: number): HTMLElement {
  const body = element('tbody', {}, ...rows.flatMap(tableRows));
  if (title !== undefined) {
    const common = element('th', { scope: 'rowgroup', colspan: columns }, title);
    body.prepend(element('tr', { class: 'table-group' }, common));
  }
  return body;
}

function tableRows({ head: first, cells, details, ...attributes }: FigureRow): HTMLElement[] {
  const values = cells.map((cell) => (isCell(cell) ? cell : element('td', {}, cell)));
  const row = element('tr', attributes, head(first, 'row'), ...values);
  return details ? [row, details] : [row];
}

function head(cell: Cell, scope: 'col' | 'row'): Node {
  return isCell(cell) ? cell : element('th', { scope }, cell);
}

function isCell(cell: Cell): cell is HTMLTableCellElement {
  return cell instanceof HTMLTableCellElement;
}
