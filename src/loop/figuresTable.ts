import type { LoopFigures } from '../../shared/analysis.ts';
import { inUnit, ranged } from '../../shared/format.ts';
import {
  LOOP_FIGURE_NAMES,
  LOOP_FIGURES,
  type LoopFigure,
  type LoopFigureName,
  loopFigureText,
} from '../../shared/loopFigures.ts';
import { element, setText } from '../app/dom.ts';
import { decibels } from './curves.ts';
import './figures.css';

export interface FiguresTable {
  readonly element: HTMLElement;
  show(present: LoopFigures, pinned: LoopFigures | null): void;
}

interface FigureRow {
  readonly name: LoopFigureName;
  readonly element: HTMLElement;
  readonly value: HTMLElement;
  readonly place: HTMLElement;
  readonly pinned: HTMLElement;
  readonly change: HTMLElement;
}

/** The figures of the loop with their units, what they are as tooltips, and what has changed since the pinned loop. */
export function createFiguresTable(): FiguresTable {
  const rows = LOOP_FIGURE_NAMES.map(figureRow);
  const head = (words: string, name: string) => element('th', { scope: 'col', class: name }, words);
  const table = element(
    'table',
    { class: 'loop-figures-table' },
    element('caption', { class: 'visually-hidden' }, 'Figures of the loop'),
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        head('Figure', ''),
        head('Now', 'loop-value'),
        head('at', 'loop-place'),
        head('Pinned', 'loop-pinned'),
        head('Change', 'loop-change'),
      ),
    ),
    element('tbody', {}, ...rows.map((row) => row.element)),
  );
  return {
    element: element(
      'div',
      { class: 'loop-figures', role: 'region', tabindex: 0, 'aria-label': 'Figures of the loop' },
      table,
    ),
    show(present, pinned) {
      table.classList.toggle('has-pinned', pinned !== null);
      table.classList.toggle('is-unstable', !present.stable);
      for (const row of rows) showRow(row, present, pinned);
    },
  };
}

function figureRow(name: LoopFigureName): FigureRow {
  const { label, definition } = LOOP_FIGURES[name];
  const cell = (kind: string) => element('td', { class: `loop-${kind}` });
  const [value, place, pinned, change] = [cell('value'), cell('place'), cell('pinned'), cell('change')];
  const row = element(
    'tr',
    { title: definition },
    element('th', { scope: 'row' }, label),
    value,
    place,
    pinned,
    change,
  );
  return { name, element: row, value, place, pinned, change };
}

function showRow(
  { name, value, place, pinned, change }: FigureRow,
  now: LoopFigures,
  then: LoopFigures | null,
): void {
  const figure: LoopFigure = LOOP_FIGURES[name];
  const found = figure.of(now);
  setText(value, valueText(figure, now));
  value.title = loopFigureText(name, now);
  setText(place, found?.frequency === undefined ? '' : ranged(found.frequency, 'Hz'));
  if (!then) return;
  const before = figure.of(then);
  setText(pinned, valueText(figure, then));
  const size = ({ value }: { readonly value: number }) => (figure.decibels ? decibels(value) : value);
  // Of an unstable loop they are no margins, and nothing to be compared with.
  const comparable = now.stable && then.stable;
  const by = found && before && comparable ? size(found) - size(before) : 0;
  setText(change, found && before && comparable ? changeText(by, figure) : '');
  const better =
    figure.better === 'neither' || change.textContent === SAME ? 0 : figure.better === 'more' ? by : -by;
  change.classList.toggle('is-better', better > 0);
  change.classList.toggle('is-worse', better < 0);
}

function valueText(figure: LoopFigure, figures: LoopFigures): string {
  const found = figure.of(figures);
  if (found === null) return figure.absent;
  return figure.decibels ? `${inUnit(decibels(found.value), '', 3)} dB` : ranged(found.value, figure.unit);
}

const SAME = 'same';

/** With its sign: '+4.10°', '−12.0 Hz'. */
function changeText(by: number, figure: LoopFigure): string {
  const text = figure.decibels ? `${Math.abs(by).toFixed(2)} dB` : ranged(Math.abs(by), figure.unit);
  if (Number.parseFloat(text) === 0) return SAME;
  return `${by > 0 ? '+' : '−'}${text}`;
}
