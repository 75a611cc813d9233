import { type Markup, markup } from '../drawing/markup.ts';
import { table } from '../paper/paperParts.ts';

/** A narrow table as two halves beside each other, each with the heads; one below the other where it is narrow. */
export function halvedTable(kind: string, heads: readonly string[], rows: readonly Markup[]): Markup {
  const half = Math.ceil(rows.length / 2);
  const halves = [rows.slice(0, half), rows.slice(half)].filter((part) => part.length > 0);
  return markup`<div class="columns">${halves.map((part) => table(`half ${kind}`, heads, part))}</div>`;
}
