import { PARAMETERS } from '../../../shared/core/parameters/table.ts';
import { GOAL_ROWS, type PretuneGoal } from '../../../shared/protocol/pretune.ts';
import { element } from '../../ui/dom.ts';
import { Field } from '../../ui/fields/field.ts';
import { labelled } from '../../ui/picker.ts';

const KINDS = {
  'peak sensitivity': 'fastest within a peak sensitivity',
  margins: 'fastest with these margins',
  settling: 'fastest settling into a window',
} as const satisfies Record<PretuneGoal['kind'], string>;

/** What pretuning is to achieve. */
export class GoalForm {
  readonly element: HTMLElement;
  readonly #sensitivity = goalField('sensitivity', 'Peak sensitivity');
  readonly #phase = goalField('phase', 'Phase margin');
  readonly #gain = goalField('gain', 'Gain margin, factor');
  readonly #window = new Field<number>(PARAMETERS.window, { id: 'goal-window', label: 'Window ±' });
  readonly #fields: Readonly<Record<PretuneGoal['kind'], readonly Field<number>[]>> = {
    'peak sensitivity': [this.#sensitivity],
    margins: [this.#phase, this.#gain],
    settling: [this.#window, this.#sensitivity],
  };
  readonly #place = element('span', { class: 'goal-fields' });
  readonly #kind = element(
    'select',
    { onchange: () => this.#show() },
    ...Object.entries(KINDS).map(([value, text]) => element('option', { value }, text)),
  );

  constructor() {
    this.#window.show(PARAMETERS.window.default);
    this.element = element('div', { class: 'goal' }, labelled('Goal', this.#kind), this.#place);
    this.#show();
  }

  /** Offers the window of the scene, m. */
  offerWindow(window: number): void {
    this.#window.show(window);
  }

  /** The goal as it is entered; null while a number of it is not legal, which its field then says. */
  goal(): PretuneGoal | null {
    const kind = this.#chosen;
    const values = this.#fields[kind].map((field) => field.read());
    const unread = values.indexOf(undefined);
    if (unread >= 0) {
      this.#fields[kind][unread]?.focus();
      return null;
    }
    const [first = Number.NaN, second = Number.NaN] = values;
    switch (kind) {
      case 'peak sensitivity':
        return { kind, limit: first };
      case 'margins':
        return { kind, phase: first, gain: second };
      case 'settling':
        return { kind, window: first, sensitivityLimit: second };
    }
  }

  get #chosen(): PretuneGoal['kind'] {
    return this.#kind.value as PretuneGoal['kind'];
  }

  #show(): void {
    this.#place.replaceChildren(...this.#fields[this.#chosen].map((field) => field.element));
  }
}

function goalField(name: keyof typeof GOAL_ROWS, label: string): Field<number> {
  const row = GOAL_ROWS[name];
  const field = new Field<number>(row, { id: `goal-${name}`, label });
  field.show(row.default);
  return field;
}
