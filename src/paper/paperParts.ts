import type { Drawing } from '../plot/drawing.ts';
import { svg } from '../plot/svg.ts';
import { Markup, markup, withIndices } from '../ui/markup.ts';

/** Sentences in a frame; nothing without any. */
export function box(kind: 'warning' | 'caution', title: string, texts: readonly string[]): Markup {
  if (texts.length === 0) return markup``;
  return markup`<section class="box ${kind}"><h2>${title}</h2>${list(texts)}</section>`;
}

export function list(texts: readonly string[]): Markup {
  return markup`<ul>${texts.map((text) => markup`<li>${withIndices(text)}</li>`)}</ul>`;
}

/** A table whose head is repeated on every sheet. */
export function table(kind: string, heads: readonly string[], rows: readonly Markup[]): Markup {
  const cells = heads.map((head) => markup`<th scope="col">${withIndices(head)}</th>`);
  return markup`<table class="${kind}">
<thead><tr>${cells}</tr></thead>
<tbody>${rows}</tbody></table>`;
}

/** What the rows below it have in common. */
export function groupRow(title: string, columns: number): Markup {
  return markup`<tr class="group"><th scope="rowgroup" colspan="${columns}">${title}</th></tr>
`;
}

/** A quantity, its symbol, its value and how the value comes about. */
export function quantityRow(label: string, symbol: string, value: string, how: string): Markup {
  return markup`<tr><th scope="row">${withIndices(label)}</th><td>${withIndices(symbol)}</td><td class="value">${value}</td><td>${withIndices(how)}</td></tr>
`;
}

/** A figure, its value and what it means. */
export function figureRow(label: string, value: string, meaning: string): Markup {
  return markup`<tr><th scope="row">${label}</th><td class="value">${value}</td><td>${withIndices(meaning)}</td></tr>
`;
}

/** A chart or a picture with its title. */
export function figure(title: string, shown: Drawing | Markup): Markup {
  return markup`<figure><figcaption>${title}</figcaption>${shown instanceof Markup ? shown : svg(shown)}</figure>
`;
}

/** What each of these figures means. */
export function meanings(
  figures: readonly { readonly label: string; readonly definition: string }[],
): Markup {
  return markup`<dl class="meanings">${figures.map(({ label, definition }) => meaning(label, definition))}</dl>`;
}

/** What a word means, as a part of a list of such. */
export function meaning(word: string, definition: string): Markup {
  return markup`<div><dt>${withIndices(word)}</dt><dd>${withIndices(definition)}</dd></div>
`;
}
