import { element, setText } from './dom.ts';

interface Choice {
  readonly value: string;
  readonly text: string;
  /** Choices that follow each other and share a group stand under its name. */
  readonly group?: string;
}

export interface Picker {
  readonly element: HTMLElement;
  /** Shows what is chosen; null: none of the list, shown in the words of `otherwise`. */
  show(value: string | null, otherwise: string): void;
}

/** A list with its name in front. */
export function labelled(text: string, select: HTMLSelectElement): HTMLElement {
  select.id = `choose-${text.toLowerCase()}`;
  return element('div', { class: 'picker' }, element('label', { for: select.id }, text), select);
}

/** A named list to choose one of, beside what is none of them, e.g. a scene that was opened from a file. */
export function createPicker(
  text: string,
  choices: readonly Choice[],
  onChoose: (value: string) => void,
): Picker {
  const other = element('option', { value: '', hidden: true });
  const select = element('select', { onchange: () => onChoose(select.value) }, other, ...grouped(choices));
  return {
    element: labelled(text, select),
    show(value, otherwise) {
      setText(other, otherwise);
      select.value = value ?? '';
    },
  };
}

/** The options of a list, those of a group under its name. */
export function grouped(choices: readonly Choice[]): HTMLElement[] {
  const made: HTMLElement[] = [];
  let group = element('optgroup');
  for (const choice of choices) {
    const option = element('option', { value: choice.value }, choice.text);
    if (choice.group === undefined) made.push(option);
    else {
      if (group.label !== choice.group) {
        group = element('optgroup', { label: choice.group });
        made.push(group);
      }
      group.append(option);
    }
  }
  return made;
}
