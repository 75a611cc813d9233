import { watchResults } from '../../studyState/changes.ts';
import { isSimulated } from '../../studyState/simulatedCandidate.ts';
import type { Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { element } from '../../ui/dom.ts';
import { labelled } from '../../ui/labelled.ts';
import { markup } from '../../ui/markup.ts';
import { createSegmented } from '../../ui/segmented.ts';
import { SECTIONS } from './accuracySections.ts';
import { drawnPart } from './drawnPart.ts';
import { createMissingCandidates } from './missingCandidates.ts';
import './results.css';

const SCALES = ['one for all', 'each its own'] as const;

/** How well each drive does it: five tests and the energy of a cycle, one at a time, all candidates beside each other. */
export function createAccuracyPane(actions: StudyActions): Pane {
  let shown: StudyState | null = null;
  const isNew = watchResults();
  const missing = createMissingCandidates(actions);
  const test = createSegmented('Test of accuracy', Object.keys(SECTIONS), refresh);
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
    const candidates = shown?.candidates.filter(isSimulated) ?? [];
    if (shown === null || candidates.length === 0) return markup``;
    return SECTIONS[test.value]!({
      candidates,
      job: shown.study.job.values,
      units: shown.units,
      state: state.value,
      oneScale: scale.value === 'one for all',
      width,
    });
  });

  function refresh(): void {
    stateControl.hidden = test.value !== 'Positioning';
    part.refresh();
  }

  return {
    element: element(
      'section',
      { class: 'results', 'aria-label': 'Accuracy and energy' },
      element('h2', {}, 'Accuracy and energy'),
      missing.element,
      controls,
      part.element,
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
