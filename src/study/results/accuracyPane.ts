import { watchResults } from '../../studyState/changes.ts';
import { isSimulated } from '../../studyState/simulatedCandidate.ts';
import type { Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { ungrouped } from '../../studyState/tables/table.ts';
import { element } from '../../ui/dom.ts';
import { labelled } from '../../ui/labelled.ts';
import { markup } from '../../ui/markup.ts';
import { createSegmented } from '../../ui/segmented.ts';
import { type DrawnPart, drawnPart } from '../parts/drawnPart.ts';
import { FigureTableView } from '../parts/figureTable.ts';
import { createMissingCandidates } from '../parts/missingCandidates.ts';
import { type Look, SECTIONS, type SectionName } from './accuracySections.ts';
import '../parts/parts.css';

const STATES = ['cold', 'warm', 'worn'] as const;
const SCALES = ['one for all', 'each its own'] as const;

/** How accurate each drive is: five tests and the energy of a cycle, one at a time, all candidates beside each other. */
export class AccuracyPane implements Pane {
  readonly element: HTMLElement;
  readonly #isNew = watchResults();
  readonly #missing;
  readonly #test = createSegmented('Test of accuracy', Object.keys(SECTIONS) as SectionName[], () =>
    this.#refresh(),
  );
  readonly #state = createSegmented('State of the machine', STATES, () => this.#refresh());
  readonly #scale = createSegmented('Scale of the drawings', SCALES, () => this.#refresh());
  readonly #stateControl = labelled('State', this.#state);
  readonly #controls: HTMLElement;
  readonly #drawings: DrawnPart;
  readonly #table = new FigureTableView();
  #study: StudyState | null = null;

  constructor(actions: StudyActions) {
    this.#missing = createMissingCandidates(actions);
    this.#controls = element(
      'div',
      { class: 'results-controls' },
      labelled('Test', this.#test),
      this.#stateControl,
      labelled('Scale', this.#scale),
    );
    this.#drawings = drawnPart(element('div'), (width) => {
      const look = this.#look();
      return look ? SECTIONS[this.#test.value].drawings(look, width) : markup``;
    });
    this.element = element(
      'section',
      { class: 'results', 'aria-label': 'Accuracy and energy' },
      element('h2', {}, 'Accuracy and energy'),
      this.#missing.element,
      this.#controls,
      this.#drawings.element,
      this.#table.element,
    );
  }

  show(state: StudyState): void {
    this.#study = state;
    this.#missing.show(state);
    if (!this.#isNew(state)) return;
    this.#controls.hidden = !state.candidates.some(isSimulated);
    this.#refresh();
  }

  #refresh(): void {
    this.#stateControl.hidden = this.#test.value !== 'Positioning';
    this.#drawings.refresh();
    const look = this.#look();
    if (look) this.#table.show('Figures', ungrouped(look.candidates, SECTIONS[this.#test.value].rows(look)));
    else this.#table.hide();
  }

  /** What is looked at, and how; null without anything. */
  #look(): Look | null {
    const state = this.#study;
    const candidates = state?.candidates.filter(isSimulated) ?? [];
    if (!state || candidates.length === 0) return null;
    return {
      candidates,
      job: state.study.job,
      state: this.#state.value,
      oneScale: this.#scale.value === 'one for all',
    };
  }
}
