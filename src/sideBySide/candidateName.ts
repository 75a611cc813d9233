import './candidateName.css';
import { element } from '../ui/dom.ts';
import { type Markup, markup } from '../ui/markup.ts';

/** The letter of a candidate. */
export function candidateLetterMark(letter = ''): HTMLElement {
  return element('b', { class: 'candidate-letter' }, letter);
}

/** Letter and title of a candidate, for a drawn part of the page. */
export function candidateName({
  letter,
  title,
}: {
  readonly letter: string;
  readonly title: string;
}): Markup {
  return markup`<b class="candidate-letter">${letter}</b> ${title}`;
}
