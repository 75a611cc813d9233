import { at } from '../../../shared/core/at.ts';
import type { DecisiveRow } from '../../../shared/verdict/decisive.ts';
import { candidateLetterMark } from '../../sideBySide/candidateName.ts';
import { element } from '../../ui/dom.ts';

/** The few figures that decide, as bars of one scale for each, with a sentence. */
export function decisiveBars(rows: readonly DecisiveRow[], letters: readonly string[]): HTMLElement {
  return element('div', { class: 'decisive' }, ...rows.map((row) => bars(row, letters)));
}

function bars({ row: { label, cells }, sentence }: DecisiveRow, letters: readonly string[]): HTMLElement {
  const largest = Math.max(...cells.map(({ value }) => value ?? 0));
  const lines = cells.map(({ value, text, fails }, place) => {
    const share = value === null || !(largest > 0) ? 0 : Math.max(value / largest, 0);
    const bar = element('span', { class: 'decisive-bar', 'aria-hidden': 'true' });
    bar.style.width = `${(100 * share).toFixed(1)}%`;
    return element(
      'tr',
      {},
      element('th', { scope: 'row' }, candidateLetterMark(at(letters, place))),
      element('td', { class: 'decisive-scale' }, bar),
      element('td', {}, `${text}${fails ? ' ✕ fails' : ''}`),
    );
  });
  return element(
    'figure',
    {},
    element('table', {}, element('caption', {}, label), element('tbody', {}, ...lines)),
    element('figcaption', {}, sentence),
  );
}
