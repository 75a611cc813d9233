import { type Markup, markup } from '../../ui/markup.ts';
import { figure } from '../paperParts.ts';

/** A picture inside the page; nothing without one. */
export function pictureOf(url: string | undefined, text: string): Markup {
  if (url === undefined) return markup``;
  return figure(text, markup`<img class="picture" src="${url}" alt="${text}">`);
}
