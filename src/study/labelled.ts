import { element } from '../app/dom.ts';
import type { Segmented } from '../app/segmented.ts';

/** A row of options with its words before it, as they can be seen. */
export function labelled<T extends string>(words: string, options: Segmented<T>): HTMLElement {
  return element(
    'div',
    { class: 'results-control' },
    element('span', { 'aria-hidden': 'true' }, words),
    options.element,
  );
}
