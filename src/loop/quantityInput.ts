import { checkNumber } from '../../shared/check.ts';
import type { NumberRow } from '../../shared/parameters/row.ts';
import { element, setText } from '../app/dom.ts';
import { fieldText } from '../panel/fieldText.ts';
import { readTyped } from '../panel/typedQuantity.ts';

/** A labelled field for one number with its unit, checked against a row of the parameter table. */
export class QuantityInput {
  readonly elements: readonly HTMLElement[];
  readonly #row: NumberRow;
  readonly #input: HTMLInputElement;
  readonly #problem: HTMLElement;

  /** `onValue` hears each legal value; an empty field is null where `empty` names what it means. */
  constructor(
    words: string,
    row: NumberRow,
    onValue: (value: number | null) => void = () => {},
    private readonly empty: string | null = null,
  ) {
    this.#row = row;
    const id = `loop-${words.toLowerCase().replaceAll(' ', '-')}`;
    this.#problem = element('p', { class: 'loop-problem', id: `${id}-problem`, role: 'alert' });
    this.#input = element('input', {
      type: 'text',
      id,
      inputmode: 'decimal',
      autocomplete: 'off',
      placeholder: empty ?? undefined,
      'aria-describedby': this.#problem.id,
      onchange: () => {
        const read = this.read();
        if (read !== undefined) onValue(read);
      },
    });
    this.elements = [
      element('label', { for: id }, words),
      this.#input,
      element('span', { class: 'field-unit' }, row.unit),
      this.#problem,
    ];
  }

  set value(value: number | null) {
    this.#input.value = value === null ? '' : fieldText(value, this.#row.unit);
    this.show(null);
  }

  /** SI; undefined while the field holds nothing legal, which it then says. */
  read(): number | null | undefined {
    const text = this.#input.value.trim();
    if (text === '' && this.empty !== null) {
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
