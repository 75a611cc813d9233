import { watchResults } from '../../studyState/changes.ts';
import { isSimulated } from '../../studyState/simulatedCandidate.ts';
import type { Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { ungrouped } from '../../studyState/tables/table.ts';
import { element } from '../../ui/dom.ts';
import { labelled } from '../../ui/labelled.ts';
import { markup } from '../../ui/markup.ts';
import { createSegmented } from '../../ui/segmented.ts';
import { drawnPart } from '../parts/drawnPart.ts';
import { FigureTableView } from '../parts/figureTable.ts';
import { createMissingCandidates } from '../parts/missingCandidates.ts';
import { type Look, SECTIONS, type SectionName } from './accuracySections.ts';
import '../parts/parts.css';

const SCALES = ['one for all', 'each its own'] as const;

/** How well each drive does it: five tests and the energy of a cycle, one at a time, all candidates beside each other. */
export function createAccuracyPane(actions: StudyActions): Pane {
  let shown: StudyState | null = null;
  const isNew = watchResults();
  const missing = createMissingCandidates(actions);
  const test = createSegmented('Test of accuracy', Object.keys(SECTIONS) as SectionName[], refresh);
  const state = createSegmented('State of the machine', ['cold', 'warm', 'worn'] as const, refresh);
  const scale = createSegmented('Scale of the drawings', SCALES, refresh);
  const stateControl = labelled('State', state);
  const controls = element(
    'div',
    { class: 'results-controls' },
    labelled('Test', test),
    stateControl,
    labelled('Scale', scale),
  );
  const part = drawnPart(element('div'), (width) => {
    const look = lookAt(shown);
    return look ? SECTIONS[test.value].drawings(look, width) : markup``;
  });
  const table = new FigureTableView();

  function lookAt(study: StudyState | null): Look | null {
    const candidates = study?.candidates.filter(isSimulated) ?? [];
    if (study === null || candidates.length === 0) return null;
    return {
      candidates,
      job: study.study.job,
      units: study.units,
      state: state.value,
      oneScale: scale.value === 'one for all',
    };
  }

  function refresh(): void {
    stateControl.hidden = test.value !== 'Positioning';
    part.refresh();
    const look = lookAt(shown);
    if (look) table.show('Figures', ungrouped(look.candidates, SECTIONS[test.value].rows(look)));
    else table.hide();
  }

  return {
    element: element(
      'section',
      { class: 'results', 'aria-label': 'Accuracy and energy' },
      element('h2', {}, 'Accuracy and energy'),
      missing.element,
      controls,
      part.element,
      table.element,
    ),
    show(next) {
      shown = next;
      missing.show(next);
      if (!isNew(next)) return;
      controls.hidden = !next.candidates.some(isSimulated);
      refresh();
    },
  };
}
