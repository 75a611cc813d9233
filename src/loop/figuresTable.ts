import { decibels } from '../../shared/core/decibels.ts';
import { ranged } from '../../shared/core/format.ts';
import type { Verdict } from '../../shared/figures/comparison.ts';
import { compareLoops } from '../../shared/figures/loopComparison.ts';
import {
  LOOP_FIGURE_NAMES,
  LOOP_FIGURES,
  type LoopFigure,
  type LoopFigureName,
  loopFigureText,
  loopValueText,
} from '../../shared/figures/loopFigures.ts';
import type { LoopFigures } from '../../shared/protocol/analysis.ts';
import { element, setText } from '../ui/dom.ts';
import { figureTable } from '../ui/figureTable.ts';
import './figures.css';

interface FiguresTable {
  readonly element: HTMLElement;
  show(present: LoopFigures, pinned: LoopFigures | null): void;
}

/** The cells of a figure that change. */
interface LiveRow {
  readonly name: LoopFigureName;
  readonly value: HTMLElement;
  readonly place: HTMLElement;
  readonly pinned: HTMLElement;
  readonly change: HTMLElement;
}

/** The figures of the loop with their units, what they are as tooltips, and what has changed since the pinned loop. */
export function createFiguresTable(): FiguresTable {
  const rows = LOOP_FIGURE_NAMES.map(liveRow);
  const head = (label: string, name: string) => element('th', { scope: 'col', class: name }, label);
  const table = figureTable({
    class: 'loop-figures-table',
    caption: element('caption', { class: 'visually-hidden' }, 'Figures of the loop'),
    columns: [
      'Figure',
      head('Now', 'loop-value'),
      head('at', 'loop-place'),
      head('Pinned', 'loop-pinned'),
      head('Change', 'loop-change'),
    ],
    rows: rows.map(({ name, value, place, pinned, change }) => ({
      head: LOOP_FIGURES[name].label,
      title: LOOP_FIGURES[name].definition,
      cells: [value, place, pinned, change],
    })),
  });
  return {
    element: element(
      'div',
      { class: 'loop-figures', role: 'region', tabindex: 0, 'aria-label': 'Figures of the loop' },
      table,
    ),
    show(present, pinned) {
      table.classList.toggle('has-pinned', pinned !== null);
      table.classList.toggle('is-unstable', !present.stable);
      const verdicts = pinned && compareLoops(pinned, present);
      for (const row of rows) showRow(row, present, pinned, verdicts?.[row.name] ?? 'same');
    },
  };
}

function liveRow(name: LoopFigureName): LiveRow {
  const cell = (kind: string) => element('td', { class: `loop-${kind}` });
  return {
    name,
    value: cell('value'),
    place: cell('place'),
    pinned: cell('pinned'),
    change: cell('change'),
  };
}

function showRow(
  { name, value, place, pinned, change }: LiveRow,
  now: LoopFigures,
  then: LoopFigures | null,
  verdict: Verdict,
): void {
  setText(value, loopValueText(name, now));
  value.title = loopFigureText(name, now);
  const figure: LoopFigure = LOOP_FIGURES[name];
  const frequency = figure.of(now)?.frequency;
  setText(place, frequency === undefined ? '' : ranged(frequency, 'Hz'));
  if (then) setText(pinned, loopValueText(name, then));
  setText(change, then ? changeText(name, then, now, verdict) : '');
  change.classList.toggle('is-better', verdict === 'better');
  change.classList.toggle('is-worse', verdict === 'worse');
}

/** With its sign: '+4.10°', '−12.0 Hz'. Nothing where an unstable loop has no margins, or either of them no figure. */
function changeText(name: LoopFigureName, then: LoopFigures, now: LoopFigures, verdict: Verdict): string {
  const figure: LoopFigure = LOOP_FIGURES[name];
  const [before, after] = [figure.of(then), figure.of(now)];
  if (!then.stable || !now.stable) return '';
  if (verdict === 'same') return 'same';
  if (!before || !after) return '';
  const size = (value: number) => (figure.decibels ? decibels(value) : value);
  const by = size(after.value) - size(before.value);
  const text = figure.decibels ? `${Math.abs(by).toFixed(2)} dB` : ranged(Math.abs(by), figure.unit);
  return `${by > 0 ? '+' : '−'}${text}`;
}
