import '../parts/parts.css';
import './sizing.css';
import { comparableNote, constantRatios } from '../../../shared/sizing/comparableNote.ts';
import { envelopeChart } from '../../drawings/envelope.ts';
import { watchChanges } from '../../studyState/changes.ts';
import type { CandidateState, Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { sizingTable } from '../../studyState/tables/sizingRows.ts';
import { element } from '../../ui/dom.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { candidateFigure } from '../parts/candidateFigure.ts';
import { columns, columnsFor } from '../parts/columns.ts';
import { comparableButton } from '../parts/comparableButton.ts';
import { drawnPart } from '../parts/drawnPart.ts';
import { FigureTableView } from '../parts/figureTable.ts';
import { createOlderJobNote } from '../parts/olderJob.ts';
import { constantsTable } from './constantsTable.ts';

/** Narrowest column of a chart, and the height of all of them, px of a drawing. */
const MIN = 300;
const HEIGHT = 240;

/** What pencil and paper say of every drive on the job, before anything is simulated. */
export function createSizingPane(actions: StudyActions): Pane {
  let state: StudyState | null = null;
  const isNew = watchChanges();
  const older = createOlderJobNote();
  const fairness = element('div', { class: 'results-words' });
  const answer = element('div', { class: 'sizing-answer', role: 'status' });
  const table = new FigureTableView();
  const charts = drawnPart(element('div'), (width) =>
    state ? envelopes(state.candidates, width) : markup``,
  );
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
      older.element,
      fairness,
      answer,
      element('h3', {}, 'Force against speed'),
      element(
        'p',
        { class: 'results-words' },
        'Solid: force for the overload time. Dashed: continuous force; the dot, the RMS of the job, has to stay below it. Thin: what the job needs from moment to moment. All drives share one scale.',
      ),
      charts.element,
      table.element,
    ),
    show(next) {
      state = next;
      older.show(next);
      if (!isNew(next.study.job, ...next.candidates.map(({ sizing }) => sizing))) return;
      charts.refresh();
      fairness.replaceChildren(
        element('p', {}, comparableNote(next.study.job, next.candidates)),
        ...constantsTable(constantRatios(next.candidates)),
      );
      answer.replaceChildren(...answers(next.candidates));
      table.show('All figures; each opens to its calculation', sizingTable(next.candidates));
    },
  };
}

function envelopes(candidates: readonly CandidateState[], width: number): Markup {
  const all = candidates.map(({ sizing }) => sizing.envelope);
  return columns(
    columnsFor(candidates.length, width, MIN),
    width,
    candidates.map(
      (candidate) => (each) =>
        candidateFigure(
          candidate,
          envelopeChart(candidate.sizing.envelope, all, { width: each, height: HEIGHT }),
        ),
    ),
  );
}

/** Which drives do the job by calculation, and what the others are beyond. */
function answers(candidates: readonly CandidateState[]): HTMLElement[] {
  const failing = candidates.filter(({ sizing }) => !sizing.passes);
  const passing = candidates.filter(({ sizing }) => sizing.passes).map(({ letter }) => letter);
  const good =
    passing.length === 0
      ? '✕ By calculation, none of these drives can do the job.'
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
