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
  let value = options[0]!;
  const inputs = options.map((option) =>
    element('input', {
      type: 'radio',
      name,
      value: option,
      checked: option === value,
      onchange: () => take(option),
    }),
  );
  const group = element(
    'fieldset',
    { class: 'segmented' },
    element('legend', {}, text),
    ...options.map((option, i) => element('label', {}, inputs[i]!, element('span', {}, option))),
  );

  function take(option: T): void {
    value = option;
    onChoose(option);
  }

  function choose(option: T): void {
    inputs[options.indexOf(option)]!.checked = true;
    take(option);
  }

  return {
    element: group,
    get value() {
      return value;
    },
    choose,
    next: () => choose(options[(options.indexOf(value) + 1) % options.length]!),
  };
}
