import { at } from '../../shared/core/at.ts';
import { element } from './dom.ts';

export interface Segmented<T extends string> {
  readonly element: HTMLElement;
  readonly value: T;
  choose(value: T): void;
  /** Goes on to the next option, round and round. */
  next(): void;
}

/** A short row of options of which one holds. */
export function createSegmented<T extends string>(
  text: string,
  options: readonly T[],
  onChoose: (value: T) => void,
): Segmented<T> {
  const name = text.toLowerCase().replaceAll(' ', '-');
  let value = at(options, 0);
  const inputs = new Map(
    options.map((option) => [
      option,
      element('input', {
        type: 'radio',
        name,
        value: option,
        checked: option === value,
        onchange: () => take(option),
      }),
    ]),
  );
  const group = element(
    'fieldset',
    { class: 'segmented' },
    element('legend', {}, text),
    ...[...inputs].map(([option, input]) => element('label', {}, input, element('span', {}, option))),
  );

  function take(option: T): void {
    value = option;
    onChoose(option);
  }

  function choose(option: T): void {
    const input = inputs.get(option);
    if (input) input.checked = true;
    take(option);
  }

  return {
    element: group,
    get value() {
      return value;
    },
    choose,
    next: () => choose(at(options, (options.indexOf(value) + 1) % options.length)),
  };
}
