import { element } from '../../ui/dom.ts';
import { afterPress, watchPresses } from '../../ui/fields/afterPress.ts';

/** The price that a candidate has been quoted, in the currency of the job; empty: the efforts of its parts are added up. */
export class PriceField {
  readonly element: HTMLElement;
  readonly #input: HTMLInputElement;

  /** `onPrice` hears a number, or the text that is none. */
  constructor(letter: string, onPrice: (price: number | string | undefined) => void) {
    watchPresses();
    this.#input = element('input', {
      type: 'text',
      inputmode: 'decimal',
      autocomplete: 'off',
      placeholder: 'from its parts',
      'aria-label': `Own price of candidate ${letter}`,
      onchange: () => afterPress(() => onPrice(read(this.#input.value.trim()))),
    });
    this.element = element('label', { class: 'candidate-price' }, 'Own price ', this.#input);
  }

  show(price: number | undefined): void {
    this.#input.value = price === undefined ? '' : String(price);
  }
}

function read(text: string): number | string | undefined {
  if (text === '') return undefined;
  const number = Number(text.replace(',', '.'));
  return Number.isFinite(number) ? number : text;
}
