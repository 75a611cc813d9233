import type { PretuneGoal } from '../../../shared/protocol/pretune.ts';
import { element } from '../../ui/dom.ts';
import { labelled } from '../../ui/picker.ts';

const KINDS = {
  'peak sensitivity': 'fastest within a peak sensitivity',
  margins: 'fastest with these margins',
  settling: 'fastest settling into a window',
} as const satisfies Record<PretuneGoal['kind'], string>;

export interface GoalForm {
  readonly element: HTMLElement;
  /** The goal as it is entered; numbers are checked by whoever works with them. */
  goal(): PretuneGoal;
}

/** What pretuning shall be after. */
export function createGoalForm(): GoalForm {
  const number = (value: number, step: number) =>
    element('input', { type: 'number', value, step, class: 'goal-number' });
  const field = (text: string, input: HTMLElement) => element('label', { class: 'goal-field' }, text, input);
  const [limit, phase, gain] = [number(1.6, 0.1), number(45, 1), number(2.5, 0.1)];
  const windowLimit = number(1.6, 0.1);
  const micrometres = number(1, 0.1);
  const fields: Record<PretuneGoal['kind'], HTMLElement[]> = {
    'peak sensitivity': [field('Peak sensitivity', limit)],
    margins: [field('Phase margin °', phase), field('Gain margin, factor', gain)],
    settling: [field('Window ± µm', micrometres), field('Peak sensitivity', windowLimit)],
  };
  const place = element('span', { class: 'goal-fields' });
  const kind = element(
    'select',
    { onchange: () => show() },
    ...Object.entries(KINDS).map(([value, text]) => element('option', { value }, text)),
  );
  const chosen = () => kind.value as PretuneGoal['kind'];
  const show = () => place.replaceChildren(...fields[chosen()]);
  show();

  return {
    element: element('div', { class: 'goal' }, labelled('Goal', kind), place),
    goal() {
      switch (chosen()) {
        case 'peak sensitivity':
          return { kind: 'peak sensitivity', limit: limit.valueAsNumber };
        case 'margins':
          return { kind: 'margins', phase: (phase.valueAsNumber * Math.PI) / 180, gain: gain.valueAsNumber };
        case 'settling':
          return {
            kind: 'settling',
            window: micrometres.valueAsNumber * 1e-6,
            sensitivityLimit: windowLimit.valueAsNumber,
          };
      }
    },
  };
}
