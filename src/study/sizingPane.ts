import './results.css';
import './sizing.css';
import { KITS } from '../../scenes/index.ts';
import { classNote } from '../../shared/sizing/classNote.ts';
import { element } from '../app/dom.ts';
import { envelopeChart } from '../drawing/charts/envelope.ts';
import { type Markup, markup } from '../drawing/markup.ts';
import { watchChanges } from './changes.ts';
import { columns, columnsFor } from './columns.ts';
import { comparableButton } from './comparableButton.ts';
import { drawnPart } from './drawnPart.ts';
import { laneFigure } from './laneTable.ts';
import { sizingTable } from './sizingTable.ts';
import type { LaneState, Pane, StudyActions, StudyState } from './state.ts';

/** Narrowest column of a chart, and the height of all of them, px of a drawing. */
const LEAST = 300;
const HEIGHT = 240;

/** What pencil and paper say of every drive on the job, before anything is simulated. */
export function createSizingPane(actions: StudyActions): Pane {
  let state: StudyState | null = null;
  const isNew = watchChanges();
  const open = new Set<string>();
  const fairness = element('p', { class: 'results-words' });
  const answer = element('div', { class: 'sizing-answer', role: 'status' });
  const table = element('div');
  const charts = drawnPart(element('div'), (width) => (state ? envelopes(state.lanes, width) : markup``));
  return {
    element: element(
      'section',
      { class: 'results', 'aria-label': 'Sizing' },
      element(
        'div',
        { class: 'sizing-head' },
        element('h2', {}, 'Sizing by calculation'),
        comparableButton(actions),
      ),
      fairness,
      answer,
      element('h3', {}, 'Force against speed'),
      element(
        'p',
        { class: 'results-words' },
        'Unbroken: what the motors give for the overload time. Dashed: for ever, where the dot, the RMS of the job, has to stay below. Thin: what the job asks from instant to instant. All drives are drawn to one scale.',
      ),
      charts.element,
      table,
    ),
    show(next) {
      state = next;
      if (!isNew(next.units, ...next.lanes.map(({ sizing }) => sizing))) return;
      charts.refresh();
      fairness.textContent = classNote(next.study.lanes, KITS);
      answer.replaceChildren(...answers(next.lanes));
      table.replaceChildren(
        ...(next.units === 'inch'
          ? [
              element(
                'p',
                { class: 'results-words' },
                'The calculations themselves are written in metric units.',
              ),
            ]
          : []),
        sizingTable(next.lanes, next.units, open),
      );
    },
  };
}

function envelopes(lanes: readonly LaneState[], width: number): Markup {
  const all = lanes.map(({ sizing }) => sizing.envelope);
  return columns(
    columnsFor(lanes.length, width, LEAST),
    width,
    lanes.map(
      (lane) => (each) =>
        laneFigure(lane, envelopeChart(lane.sizing.envelope, all, { width: each, height: HEIGHT })),
    ),
  );
}

/** Which drives do the job by calculation, and what the others are beyond. */
function answers(lanes: readonly LaneState[]): HTMLElement[] {
  const failing = lanes.filter(({ sizing }) => !sizing.passes);
  const passing = lanes.filter(({ sizing }) => sizing.passes).map(({ letter }) => letter);
  const good =
    passing.length === 0
      ? '✕ None of these drives does the job by calculation.'
      : `✓ ${passing.join(', ')}: every figure is within its limit.`;
  return [
    element('p', { class: 'sizing-good' }, good),
    ...failing.map(({ letter, title, sizing }) =>
      element(
        'div',
        { class: 'sizing-beyond' },
        element('p', {}, element('b', {}, `✕ ${letter}`), ` ${title} is beyond its limits:`),
        element('ul', {}, ...sizing.reasons.map((reason) => element('li', {}, reason))),
      ),
    ),
  ];
}
