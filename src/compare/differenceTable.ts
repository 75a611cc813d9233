import type { Difference } from '../../shared/figures/comparison.ts';
import { element } from '../ui/dom.ts';
import { type FigureRow, figureTable } from '../ui/figureTable.ts';

/** Lines of differences as a table under `title`; the verdict is a word, so that no colour has to be told. */
export function differenceTable(
  title: string,
  [before, after]: readonly [string, string],
  differences: readonly Difference[],
): HTMLTableElement {
  return figureTable({
    class: 'dialog-table differences',
    columns: [title, before, after, 'Change', 'Verdict'],
    rows: differences.map(row),
  });
}

function row({ label, before, after, change, verdict }: Difference): FigureRow {
  return {
    head: label,
    cells: [
      before,
      after,
      verdict === 'same' ? '' : changeText(change),
      element('td', { class: 'verdict' }, verdict),
    ],
    'data-verdict': verdict,
  };
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
