import { type Markup, markup } from '../drawing/markup.ts';

/** A picture inside the page; nothing without one. */
export function pictureOf(url: string | undefined, words: string): Markup {
  if (url === undefined) return markup``;
  return markup`<figure class="picture"><img src="${url}" alt="${words}"><figcaption>${words}</figcaption></figure>`;
}
