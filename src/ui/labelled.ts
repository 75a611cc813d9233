import { element } from './dom.ts';
import type { Segmented } from './segmented.ts';

/** A row of options with its words before it, as they can be seen. */
export function labelled<T extends string>(text: string, options: Segmented<T>): HTMLElement {
  return element(
    'div',
    { class: 'results-control' },
    element('span', { 'aria-hidden': 'true' }, text),
    options.element,
  );
}
