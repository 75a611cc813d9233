import { type Markup, markup } from '../drawing/markup.ts';

/** Between columns, px of a drawing. */
const COLUMN_GAP = 20;

/** How many columns of at least `least` px stand beside each other for so many lanes: no row is left with a single one of many. */
export function columnsFor(lanes: number, width: number, least: number): number {
  const most = Math.max(1, Math.floor(width / least));
  const rows = Math.ceil(lanes / most);
  return Math.ceil(lanes / rows);
}

/** Figures beside each other; each is told the width it has. */
export function columns(
  count: number,
  width: number,
  figures: readonly ((width: number) => Markup)[],
): Markup {
  const each = Math.floor((width - COLUMN_GAP * (count - 1)) / count);
  return markup`<div class="drawn-columns" style="--columns: ${count}">${figures.map((figure) => figure(each))}</div>`;
}
