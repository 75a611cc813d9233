import { button, element, setText } from '../ui/dom.ts';
import { fieldText } from '../ui/fields/fieldText.ts';
import { readTyped } from '../ui/fields/typedQuantity.ts';

/** Hz; a position loop is crossed over somewhere between a soft crane and a stiff voice coil. Common practice. */
const RANGE = [0.5, 1000] as const;

/** Asks for a crossover and sets the gains to start tuning from. */
export class StartGainsForm {
  readonly element: HTMLElement;
  readonly #input: HTMLInputElement;
  readonly #problem = element('p', { class: 'field-problem', id: 'crossover-problem', role: 'alert' });

  /** `apply` sets the gains for a crossover in Hz and returns what is wrong, or null. */
  constructor(apply: (crossover: number) => string | null) {
    const submit = (event?: Event) => {
      event?.preventDefault();
      this.#show(this.#read(apply));
    };
    this.#input = element('input', {
      type: 'text',
      id: 'crossover',
      inputmode: 'decimal',
      autocomplete: 'off',
      'aria-describedby': 'crossover-problem',
    });
    this.element = element(
      'form',
      { class: 'start-gains', onsubmit: submit },
      element('label', { for: 'crossover' }, 'Crossover'),
      this.#input,
      element('span', { class: 'field-unit' }, 'Hz'),
      button('Start gains', submit, {
        title: 'Gains, feedforward and bias to start tuning from, for the present mass taken as rigid',
      }),
      this.#problem,
    );
  }

  set crossover(value: number) {
    this.#input.value = fieldText(value, 'Hz');
    this.#show(null);
  }

  #read(apply: (crossover: number) => string | null): string | null {
    const typed = readTyped(this.#input.value, 'Hz');
    if ('problem' in typed) return typed.problem;
    const [min, max] = RANGE;
    if (!(typed.value >= min && typed.value <= max)) {
      return `${this.#input.value} is outside the range; give ${min} to ${max} Hz.`;
    }
    return apply(typed.value);
  }

  #show(problem: string | null): void {
    setText(this.#problem, problem ?? '');
    this.#input.setAttribute('aria-invalid', String(problem !== null));
  }
}
