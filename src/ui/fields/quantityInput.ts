import { checkNumber } from '../../../shared/core/check.ts';
import type { NumberRow } from '../../../shared/core/parameters/row.ts';
import { element, setText } from '../dom.ts';
import { afterPress, watchPresses } from './afterPress.ts';
import { fieldText } from './fieldText.ts';
import { readTyped } from './typedQuantity.ts';

export interface QuantityOptions {
  /** Of the input; made of the words unless stated. */
  readonly id?: string;
  /** What an empty field means, which then is null; without it a field may not be empty. */
  readonly empty?: string;
}

/** A labelled field for one number with its unit, checked against a row of a table. */
export class QuantityInput {
  readonly elements: readonly HTMLElement[];
  readonly #empty: boolean;
  readonly #unit: HTMLElement;
  #row: NumberRow;
  readonly #input: HTMLInputElement;
  readonly #problem: HTMLElement;

  /** `onValue` hears each legal value. */
  constructor(
    label: string,
    row: NumberRow,
    onValue: (value: number | null) => void = () => {},
    { id = `quantity-${label.toLowerCase().replaceAll(' ', '-')}`, empty }: QuantityOptions = {},
  ) {
    watchPresses();
    this.#row = row;
    this.#empty = empty !== undefined;
    this.#unit = element('span', { class: 'field-unit' }, row.unit);
    this.#problem = element('p', { class: 'field-problem', id: `${id}-problem`, role: 'alert' });
    this.#input = element('input', {
      type: 'text',
      id,
      inputmode: 'decimal',
      autocomplete: 'off',
      spellcheck: 'false',
      placeholder: empty,
      'aria-describedby': this.#problem.id,
      onchange: () =>
        afterPress(() => {
          const read = this.read();
          if (read !== undefined) onValue(read);
        }),
    });
    this.elements = [element('label', { for: id }, label), this.#input, this.#unit, this.#problem];
  }

  /** The same row in another unit; whoever changes it shows the value again. */
  set row(row: NumberRow) {
    this.#row = row;
    setText(this.#unit, row.unit);
  }

  set value(value: number | null) {
    this.#input.value = value === null ? '' : fieldText(value, this.#row.unit);
    this.show(null);
  }

  /** A person is at it: the text is being typed, or is no legal value yet. */
  get isUnderWay(): boolean {
    return document.activeElement === this.#input || this.#input.getAttribute('aria-invalid') === 'true';
  }

  /** SI; undefined while the field holds nothing legal, which it then says. */
  read(): number | null | undefined {
    const text = this.#input.value.trim();
    if (text === '' && this.#empty) {
      this.show(null);
      return null;
    }
    const typed = readTyped(text, this.#row.unit);
    const checked = 'problem' in typed ? { wrong: typed.problem } : checkNumber(typed.value, this.#row);
    this.show('wrong' in checked ? checked.wrong : null);
    return 'wrong' in checked ? undefined : checked.legal;
  }

  show(problem: string | null): void {
    setText(this.#problem, problem ?? '');
    this.#input.setAttribute('aria-invalid', String(problem !== null));
  }
}
