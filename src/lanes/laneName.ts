import './laneName.css';
import { element } from '../app/dom.ts';
import { type Markup, markup } from '../drawing/markup.ts';

/** The letter of a lane. */
export function laneLetterMark(letter = ''): HTMLElement {
  return element('b', { class: 'lane-letter' }, letter);
}

/** Letter and title of a lane, for a drawn part of the page. */
export function laneName({ letter, title }: { readonly letter: string; readonly title: string }): Markup {
  return markup`<b class="lane-letter">${letter}</b> ${title}`;
}
