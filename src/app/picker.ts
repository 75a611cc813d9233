import { element } from './dom.ts';

export interface Choice {
  readonly value: string;
  readonly words: string;
}

export interface Picker {
  readonly element: HTMLElement;
  /** Shows what is chosen; null: none of the list, shown as `otherwise`. */
  show(value: string | null): void;
}

/** A named list to choose one of, beside what is none of them, e.g. a scene that was opened from a file. */
export function createPicker(
  words: string,
  choices: readonly Choice[],
  otherwise: string,
  onChoose: (value: string) => void,
): Picker {
  const other = element('option', { value: '', hidden: true }, otherwise);
  const select = element(
    'select',
    { onchange: () => onChoose(select.value) },
    other,
    ...choices.map(({ value, words }) => element('option', { value }, words)),
  );
  return {
    element: element('label', { class: 'picker' }, element('span', {}, words), select),
    show(value) {
      select.value = value ?? '';
    },
  };
}
