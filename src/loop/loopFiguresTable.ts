import type { LoopFigures } from '../../shared/analysis.ts';
import { inUnit } from '../../shared/format.ts';
import {
  LOOP_FIGURE_NAMES,
  LOOP_FIGURES,
  type LoopFigureName,
  loopFigureText,
} from '../../shared/loopFigures.ts';
import { element, setText } from '../app/dom.ts';

/** What an engineer reads first. */
const SHOWN: readonly LoopFigureName[] = LOOP_FIGURE_NAMES.filter(
  (name) => name !== 'gainReduction' && name !== 'holdingVoltage',
);

export interface LoopFiguresTable {
  readonly element: HTMLElement;
  show(figures: LoopFigures, pinned: LoopFigures | null): void;
  /** Says why there are no figures. */
  refuse(words: string): void;
}

/** Verdict and figures of the loop, with those of a pinned loop beside them. */
export function createLoopFiguresTable(): LoopFiguresTable {
  const verdict = element('p', { class: 'loop-verdict', role: 'status' }, 'Analysing …');
  const rows = SHOWN.map((name) => {
    const { label, definition } = LOOP_FIGURES[name];
    const [now, before] = [element('td'), element('td', { class: 'loop-before' })];
    return {
      name,
      now,
      before,
      row: element('tr', { title: definition }, element('th', { scope: 'row' }, label), now, before),
    };
  });
  const head = element(
    'thead',
    { hidden: true },
    element(
      'tr',
      {},
      element('th', {}, ''),
      element('th', { scope: 'col' }, 'now'),
      element('th', { scope: 'col' }, 'pinned'),
    ),
  );
  const table = element('table', {}, head, element('tbody', {}, ...rows.map(({ row }) => row)));

  return {
    element: element('div', { class: 'loop-figures' }, verdict, table),
    show(figures, pinned) {
      setText(verdict, verdictWords(figures));
      verdict.classList.toggle('is-unstable', !figures.stable);
      head.hidden = pinned === null;
      for (const { name, now, before } of rows) {
        setText(now, loopFigureText(name, figures));
        setText(before, pinned ? loopFigureText(name, pinned) : '');
      }
    },
    refuse(words) {
      setText(verdict, words);
      verdict.classList.add('is-unstable');
      for (const { now } of rows) setText(now, '—');
    },
  };
}

function verdictWords({ stable, spectralRadius, conditional, modulusMargin }: LoopFigures): string {
  if (!stable) return `Unstable: it grows by ${inUnit(100 * (spectralRadius - 1), '', 2)} % at each sample.`;
  const peak = inUnit(1 / modulusMargin.value, '', 3);
  return conditional
    ? `Stable, but only above a least gain. Peak sensitivity ${peak}.`
    : `Stable. Peak sensitivity ${peak}.`;
}
