import { type Markup, markup } from '../drawing/markup.ts';
import { figure } from '../paper/paperParts.ts';

/** A picture inside the page; nothing without one. */
export function pictureOf(url: string | undefined, words: string): Markup {
  if (url === undefined) return markup``;
  return figure(words, markup`<img class="picture" src="${url}" alt="${words}">`);
}
