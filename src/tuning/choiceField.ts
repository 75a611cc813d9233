import type { GUI } from 'lil-gui';
import type { ChoiceRow, RowValue as Value } from '../../shared/core/parameters/row.ts';
import type { ParameterName } from '../../shared/core/parameters/table.ts';
import { element } from '../ui/dom.ts';
import { type FieldContext, ParameterField } from './parameterField.ts';

/** One of a few options. */
export class ChoiceField extends ParameterField {
  declare readonly row: ChoiceRow;
  protected readonly input: HTMLSelectElement;

  constructor(folder: GUI, name: ParameterName, context: FieldContext) {
    super(folder, name, context, 'field-choice');
    this.input = element(
      'select',
      { onchange: () => this.#choose() },
      ...this.row.options.map((option) => element('option', { value: option }, option)),
    );
    this.assemble(this.input);
  }

  protected display(value: Value): void {
    this.input.value = String(value);
  }

  #choose(): void {
    if (!this.propose(this.input.value, null)) this.display(this.value);
  }
}
