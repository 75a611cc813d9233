import { type Markup, markup } from '../../ui/markup.ts';

/** Between columns, px of a drawing. */
const COLUMN_GAP = 20;

/** How many columns of at least `least` px stand beside each other for so many candidates: no row is left with a single one of many. */
export function columnsFor(candidates: number, width: number, min: number): number {
  const max = Math.max(1, Math.floor(width / min));
  const rows = Math.ceil(candidates / max);
  return Math.ceil(candidates / rows);
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
