import { PRESETS } from '../../../scenes/index.ts';
import type { UnitSystem } from '../../../shared/core/unitSystem.ts';
import { candidateLetter, MAX_CANDIDATES } from '../../../shared/study/candidate.ts';
import type { StudyActions, StudyState } from '../../studyState/state.ts';
import { button, element } from '../../ui/dom.ts';
import { comparableButton } from '../parts/comparableButton.ts';
import { CandidateRow } from './candidateRow.ts';
import { DatasheetDialog } from './datasheetDialog.ts';

/** Which drive each candidate is. */
export class CandidatesForm {
  readonly element: HTMLElement;
  readonly #rows: readonly CandidateRow[];
  readonly #add: HTMLButtonElement;
  readonly #datasheet: DatasheetDialog;
  #units: UnitSystem = 'metric';
  #count = 0;
  /** The candidate whose datasheet is open. */
  #open: CandidateRow | null = null;

  constructor(actions: StudyActions) {
    this.#datasheet = new DatasheetDialog(
      (own) => this.#open?.propose({ ...this.#open.choice, own }) ?? null,
    );
    this.#rows = Array.from(
      { length: MAX_CANDIDATES },
      (_, index) =>
        new CandidateRow(candidateLetter(index), {
          onChoice: (choice) => actions.setCandidate(index, choice),
          onRemove: () => actions.setCandidate(index, null),
          onDatasheet: (row) => this.#openDatasheet(row),
        }),
    );
    this.#add = button('Add a drive', () =>
      actions.setCandidate(this.#count, { preset: this.#unusedPreset(), motorCount: 1, own: {} }),
    );
    this.element = element(
      'section',
      { 'aria-labelledby': 'candidates-form-title' },
      element('h3', { id: 'candidates-form-title' }, 'Candidate drives'),
      element('ol', { class: 'candidate-rows' }, ...this.#rows.map((row) => row.element)),
      element('div', { class: 'dialog-ways' }, this.#add, comparableButton(actions)),
    );
  }

  show({ units, candidates }: StudyState): void {
    this.#units = units;
    this.#count = candidates.length;
    for (const [index, row] of this.#rows.entries())
      row.show(candidates[index] ?? null, candidates.length > 1);
    this.#add.disabled = candidates.length >= MAX_CANDIDATES;
  }

  /** Of a drive type that is not tried yet, if there is one. */
  #unusedPreset(): string {
    const tried = this.#rows.slice(0, this.#count).map(({ choice }) => PRESETS[choice.preset]?.driveType);
    const ids = Object.keys(PRESETS);
    return ids.find((id) => !tried.includes(PRESETS[id]?.driveType)) ?? ids[0] ?? '';
  }

  #openDatasheet(row: CandidateRow): void {
    const preset = PRESETS[row.choice.preset];
    if (!preset) return;
    this.#open = row;
    this.#datasheet.open(row.letter, preset, row.choice.own, this.#units);
  }
}
