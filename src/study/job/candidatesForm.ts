import { PRESETS } from '../../../scenes/index.ts';
import { inUnit } from '../../../shared/core/format.ts';
import { PARAMETERS } from '../../../shared/core/parameters/table.ts';
import { maxMotors } from '../../../shared/core/preset.ts';
import { DRIVE_TYPES, type DriveType } from '../../../shared/core/scene.ts';
import { type UnitSystem, unitIn } from '../../../shared/core/units.ts';
import { classForce } from '../../../shared/sizing/driveClass.ts';
import { type CandidateChoice, candidateLetter, MAX_CANDIDATES } from '../../../shared/study/candidate.ts';
import { candidateLetterMark } from '../../sideBySide/candidateName.ts';
import type { CandidateState, StudyActions, StudyState } from '../../studyState/state.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { inPanelText } from '../../ui/fields/label.ts';
import { grouped } from '../../ui/picker.ts';
import { comparableButton } from '../parts/comparableButton.ts';
import { createDatasheetDialog } from './datasheetDialog.ts';

export interface CandidatesForm {
  readonly element: HTMLElement;
  show(state: StudyState): void;
}

const GROUP_TITLES: Readonly<Record<DriveType, string>> = {
  tubular: 'Tubular motors',
  'u-channel': 'U-channel motors',
  flat: 'Flat motors',
  screw: 'Screws with rotary motors',
};

type Choice = Omit<CandidateChoice, 'gains'>;

const forceOf = (preset: string) => classForce({ preset, motorCount: 1, own: {}, gains: null }, PRESETS);

/** Which drive is tried in which candidate. */
export function createCandidatesForm(actions: StudyActions): CandidatesForm {
  let units: UnitSystem = 'metric';
  /** The candidate whose datasheet is open. */
  let open = 0;
  const datasheet = createDatasheetDialog((own) =>
    actions.setCandidate(open, { ...rows[open]!.choice, own }),
  );
  const rows = Array.from({ length: MAX_CANDIDATES }, (_, index) =>
    createCandidateRow(index, {
      onChoice: (choice) => actions.setCandidate(index, choice),
      onRemove: () => actions.setCandidate(index, null),
      onDatasheet: ({ preset, own }) => {
        open = index;
        datasheet.open(candidateLetter(index), PRESETS[preset]!, own, units);
      },
    }),
  );
  let count = 0;
  const add = button('Add a drive', () =>
    actions.setCandidate(count, { preset: unusedPreset(), motorCount: 1, own: {} }),
  );
  const list = element('ol', { class: 'candidate-rows' }, ...rows.map((row) => row.element));

  /** Of a form that is not tried yet, if there is one. */
  function unusedPreset(): string {
    const tried = rows.slice(0, count).map((row) => PRESETS[row.choice.preset]!.driveType);
    const ids = Object.keys(PRESETS);
    return ids.find((id) => !tried.includes(PRESETS[id]!.driveType)) ?? ids[0]!;
  }

  return {
    element: element(
      'section',
      { 'aria-labelledby': 'candidates-form-title' },
      element('h3', { id: 'candidates-form-title' }, 'Drives that try it'),
      list,
      element('div', { class: 'dialog-ways' }, add, comparableButton(actions)),
      datasheet.element,
    ),
    show({ units: system, candidates }) {
      units = system;
      count = candidates.length;
      for (const [index, row] of rows.entries())
        row.show(candidates[index] ?? null, candidates.length > 1, units);
      add.disabled = candidates.length >= MAX_CANDIDATES;
    },
  };
}

interface CandidateRowOptions {
  onChoice(choice: Choice): string | null;
  onRemove(): void;
  onDatasheet(choice: Choice): void;
}

function createCandidateRow(index: number, { onChoice, onRemove, onDatasheet }: CandidateRowOptions) {
  const letter = candidateLetter(index);
  let choice: Choice = { preset: '', motorCount: 1, own: {} };
  const preset = element(
    'select',
    {
      'aria-label': `Drive of candidate ${letter}`,
      onchange: () => take({ preset: preset.value, motorCount: 1, own: {} }),
    },
    ...grouped(
      DRIVE_TYPES.flatMap((driveType) =>
        Object.entries(PRESETS)
          .filter(([, each]) => each.driveType === driveType)
          .sort(([a], [b]) => forceOf(a) - forceOf(b))
          .map(([value, { title }]) => ({ value, text: title, group: GROUP_TITLES[driveType] })),
      ),
    ),
  );
  const counts = Array.from({ length: PARAMETERS.motorCount.max }, (_, k) =>
    element('option', { value: k + 1 }, k === 0 ? '1 motor' : `${k + 1} motors`),
  );
  const motors = element(
    'select',
    {
      'aria-label': `Motors in parallel of candidate ${letter}`,
      onchange: () => take({ ...choice, motorCount: Number(motors.value) }),
    },
    ...counts,
  );
  const force = element('span', { class: 'candidate-force' });
  const own = button('Own datasheet …', () => onDatasheet(choice));
  const remove = button('Remove', onRemove, { 'aria-label': `Remove candidate ${letter}` });
  const problem = element('p', { class: 'field-problem', role: 'alert' });
  const root = element(
    'li',
    { class: 'candidate-row' },
    candidateLetterMark(letter),
    preset,
    motors,
    force,
    own,
    remove,
    problem,
  );

  function take(next: Choice): void {
    const wrong = onChoice(next);
    setText(problem, wrong === null ? '' : inPanelText(wrong));
    if (wrong !== null) fill();
  }

  function fill(): void {
    preset.value = choice.preset;
    const max = maxMotors(PRESETS[choice.preset]!);
    for (const [k, option] of counts.entries()) option.disabled = k >= max;
    motors.value = String(choice.motorCount);
  }

  return {
    element: root,
    get choice() {
      return choice;
    },
    show(candidate: CandidateState | null, mayGo: boolean, units: UnitSystem): void {
      root.hidden = candidate === null;
      if (!candidate) return;
      const { gains: _gains, ...now } = candidate.choice;
      choice = now;
      fill();
      setText(problem, '');
      setText(force, `${inUnit(classForce(candidate.choice, PRESETS), unitIn(units, 'N'))} continuous`);
      const typed = Object.keys(choice.own).length;
      setText(own, typed === 0 ? 'Own datasheet …' : `${typed} own ${typed === 1 ? 'value' : 'values'} …`);
      remove.disabled = !mayGo;
    },
  };
}
