import type { Difference } from '../../shared/figures/comparison.ts';
import { element } from '../ui/dom.ts';

/** Lines of differences as a table under `title`; the verdict is a word, so that no colour has to be told. */
export function differenceTable(
  title: string,
  [before, after]: readonly [string, string],
  differences: readonly Difference[],
): HTMLTableElement {
  const heads = [title, before, after, 'Change', 'Verdict'];
  return element(
    'table',
    { class: 'dialog-table differences' },
    element('thead', {}, element('tr', {}, ...heads.map((text) => element('th', { scope: 'col' }, text)))),
    element('tbody', {}, ...differences.map(row)),
  );
}

function row({ label, before, after, change, verdict }: Difference): HTMLElement {
  return element(
    'tr',
    { 'data-verdict': verdict },
    element('th', { scope: 'row' }, label),
    element('td', {}, before),
    element('td', {}, after),
    element('td', {}, verdict === 'same' ? '' : changeText(change)),
    element('td', { class: 'verdict' }, verdict),
  );
}

/** '+12 %', '−0.4 %', or nothing where there is no such share. */
export function changeText(change: number | null): string {
  if (change === null) return '';
  const percent = change * 100;
  const size = Math.abs(percent);
  const digits = size >= 10 ? size.toFixed(0) : size.toFixed(1);
  if (Number(digits) === 0) return '0 %';
  return `${percent < 0 ? '−' : '+'}${digits} %`;
}
