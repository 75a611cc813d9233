import type { GUI } from 'lil-gui';
import type { RowValue as Value } from '../../shared/core/parameters/row.ts';
import type { ParameterName } from '../../shared/core/parameters/table.ts';
import { element } from '../ui/dom.ts';
import { type FieldContext, ParameterField } from './parameterField.ts';

/** On or off. */
export class SwitchField extends ParameterField {
  protected readonly input: HTMLInputElement;

  constructor(folder: GUI, name: ParameterName, context: FieldContext) {
    super(folder, name, context, 'field-switch');
    this.input = element('input', { type: 'checkbox', onchange: () => this.#toggle() });
    this.assemble(this.input);
  }

  protected display(value: Value): void {
    this.input.checked = value === true;
  }

  #toggle(): void {
    if (!this.propose(this.input.checked, null)) this.display(this.value);
  }
}
