import { ranged } from '../../shared/core/format.ts';
import { log } from '../../shared/core/parameters/row.ts';
import { button, element, setText } from '../ui/dom.ts';
import { Field } from '../ui/fields/field.ts';

/** A position loop is crossed over somewhere between a soft crane and a stiff voice coil. Common practice. */
const CROSSOVER = log('', 'Hz', [0.5, 1000], 50, 'Crossover wanted for the start gains');

/** Asks for a crossover and sets the gains to start tuning from. */
export class StartGainsForm {
  readonly element: HTMLElement;
  readonly #present = element('p', { class: 'field-note' });
  readonly #field = new Field<number>(CROSSOVER, { id: 'crossover', label: 'Wanted crossover' });

  /** `apply` sets the gains for a crossover in Hz and returns what is wrong, or null. */
  constructor(apply: (crossover: number) => string | null) {
    const submit = (event?: Event) => {
      event?.preventDefault();
      const crossover = this.#field.read();
      if (crossover !== undefined) this.#field.showProblem(apply(crossover));
    };
    this.element = element(
      'form',
      { class: 'start-gains', onsubmit: submit },
      this.#field.element,
      this.#present,
      button('Start gains', submit, {
        title: 'Start gains, feedforward and bias for the present mass, taken as rigid',
      }),
    );
  }

  /** What the loop on the bench has, Hz; null where it has none or is unstable. */
  showPresent(crossover: number | null, isStable: boolean): void {
    const text =
      crossover === null
        ? 'The loop has no crossover.'
        : `Crossover of the loop now: ${ranged(crossover, 'Hz')}.`;
    setText(this.#present, isStable ? text : 'The loop is unstable as it is set.');
  }

  /** Hz. */
  set crossover(value: number) {
    this.#field.show(value);
  }
}
