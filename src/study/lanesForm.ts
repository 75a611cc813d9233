import { KITS } from '../../scenes/index.ts';
import { inUnit } from '../../shared/format.ts';
import { mostMotors } from '../../shared/kit.ts';
import { PARAMETERS } from '../../shared/parameters/table.ts';
import { FORMS, type Form } from '../../shared/scene.ts';
import { classForce } from '../../shared/sizing/driveClass.ts';
import { type LaneChoice, laneLetter, MOST_LANES } from '../../shared/study/lane.ts';
import { type UnitSystem, unitIn } from '../../shared/units.ts';
import { button, element, setText } from '../app/dom.ts';
import { grouped } from '../app/picker.ts';
import { laneLetterMark } from '../lanes/laneName.ts';
import { inPanelWords } from '../panel/label.ts';
import { comparableButton } from './comparableButton.ts';
import { createDatasheetDialog } from './datasheetDialog.ts';
import type { LaneState, StudyActions, StudyState } from './state.ts';

export interface LanesForm {
  readonly element: HTMLElement;
  show(state: StudyState): void;
}

const GROUP_TITLES: Readonly<Record<Form, string>> = {
  tubular: 'Tubular motors',
  'u-channel': 'U-channel motors',
  flat: 'Flat motors',
  screw: 'Screws with rotary motors',
};

type Choice = Omit<LaneChoice, 'gains'>;

const forceOf = (kit: string) => classForce({ kit, motorCount: 1, own: {}, gains: null }, KITS);

/** Which drive is tried in which lane. */
export function createLanesForm(actions: StudyActions): LanesForm {
  let units: UnitSystem = 'metric';
  /** The lane whose datasheet is open. */
  let open = 0;
  const datasheet = createDatasheetDialog((own) => actions.setLane(open, { ...rows[open]!.choice, own }));
  const rows = Array.from({ length: MOST_LANES }, (_, index) =>
    createLaneRow(index, {
      onChoice: (choice) => actions.setLane(index, choice),
      onRemove: () => actions.setLane(index, null),
      onDatasheet: ({ kit, own }) => {
        open = index;
        datasheet.open(laneLetter(index), KITS[kit]!, own, units);
      },
    }),
  );
  let count = 0;
  const add = button('Add a drive', () =>
    actions.setLane(count, { kit: unusedKit(), motorCount: 1, own: {} }),
  );
  const list = element('ol', { class: 'lane-rows' }, ...rows.map((row) => row.element));

  /** Of a form that is not tried yet, if there is one. */
  function unusedKit(): string {
    const tried = rows.slice(0, count).map((row) => KITS[row.choice.kit]!.form);
    const ids = Object.keys(KITS);
    return ids.find((id) => !tried.includes(KITS[id]!.form)) ?? ids[0]!;
  }

  return {
    element: element(
      'section',
      { 'aria-labelledby': 'lanes-form-title' },
      element('h3', { id: 'lanes-form-title' }, 'Drives that try it'),
      list,
      element('div', { class: 'dialog-ways' }, add, comparableButton(actions)),
      datasheet.element,
    ),
    show({ units: system, lanes }) {
      units = system;
      count = lanes.length;
      for (const [index, row] of rows.entries()) row.show(lanes[index] ?? null, lanes.length > 1, units);
      add.disabled = lanes.length >= MOST_LANES;
    },
  };
}

interface LaneRowOptions {
  onChoice(choice: Choice): string | null;
  onRemove(): void;
  onDatasheet(choice: Choice): void;
}

function createLaneRow(index: number, { onChoice, onRemove, onDatasheet }: LaneRowOptions) {
  const letter = laneLetter(index);
  let choice: Choice = { kit: '', motorCount: 1, own: {} };
  const kit = element(
    'select',
    {
      'aria-label': `Drive of lane ${letter}`,
      onchange: () => take({ kit: kit.value, motorCount: 1, own: {} }),
    },
    ...grouped(
      FORMS.flatMap((form) =>
        Object.entries(KITS)
          .filter(([, each]) => each.form === form)
          .sort(([a], [b]) => forceOf(a) - forceOf(b))
          .map(([value, { title }]) => ({ value, words: title, group: GROUP_TITLES[form] })),
      ),
    ),
  );
  const counts = Array.from({ length: PARAMETERS.motorCount.max }, (_, k) =>
    element('option', { value: k + 1 }, k === 0 ? '1 motor' : `${k + 1} motors`),
  );
  const motors = element(
    'select',
    {
      'aria-label': `Motors in parallel of lane ${letter}`,
      onchange: () => take({ ...choice, motorCount: Number(motors.value) }),
    },
    ...counts,
  );
  const force = element('span', { class: 'lane-force' });
  const own = button('Own datasheet …', () => onDatasheet(choice));
  const remove = button('Remove', onRemove, { 'aria-label': `Remove lane ${letter}` });
  const problem = element('p', { class: 'field-problem', role: 'alert' });
  const root = element(
    'li',
    { class: 'lane-row' },
    laneLetterMark(letter),
    kit,
    motors,
    force,
    own,
    remove,
    problem,
  );

  function take(next: Choice): void {
    const wrong = onChoice(next);
    setText(problem, wrong === null ? '' : inPanelWords(wrong));
    if (wrong !== null) fill();
  }

  function fill(): void {
    kit.value = choice.kit;
    const most = mostMotors(KITS[choice.kit]!);
    for (const [k, option] of counts.entries()) option.disabled = k >= most;
    motors.value = String(choice.motorCount);
  }

  return {
    element: root,
    get choice() {
      return choice;
    },
    show(lane: LaneState | null, mayGo: boolean, units: UnitSystem): void {
      root.hidden = lane === null;
      if (!lane) return;
      const { gains: _gains, ...now } = lane.choice;
      choice = now;
      fill();
      setText(problem, '');
      setText(force, `${inUnit(classForce(lane.choice, KITS), unitIn(units, 'N'))} continuous`);
      const typed = Object.keys(choice.own).length;
      setText(own, typed === 0 ? 'Own datasheet …' : `${typed} own ${typed === 1 ? 'value' : 'values'} …`);
      remove.disabled = !mayGo;
    },
  };
}
