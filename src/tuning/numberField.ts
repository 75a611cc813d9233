import type { GUI } from 'lil-gui';
import type { NumberRow, RowValue as Value } from '../../shared/core/parameters/row.ts';
import type { ParameterName } from '../../shared/core/parameters/table.ts';
import { element } from '../ui/dom.ts';
import { fieldText } from '../ui/fields/fieldText.ts';
import { parameterLabel, valueText } from '../ui/fields/label.ts';
import { sliderScale } from '../ui/fields/logScale.ts';
import { readTyped } from '../ui/fields/typedQuantity.ts';
import { type FieldContext, ParameterField } from './parameterField.ts';

/** A number: typed with its unit, or dragged on a slider whose scale is the row's. */
export class NumberField extends ParameterField {
  declare readonly row: NumberRow;
  protected readonly input: HTMLInputElement;
  readonly #slider: HTMLInputElement;
  readonly #scale: ReturnType<typeof sliderScale>;
  #gestures = 0;

  constructor(folder: GUI, name: ParameterName, context: FieldContext) {
    super(folder, name, context, 'field-number');
    this.#scale = sliderScale(this.row);
    this.input = element('input', {
      type: 'text',
      inputmode: 'decimal',
      autocomplete: 'off',
      spellcheck: 'false',
      onchange: () => this.#type(),
      onfocus: () => this.input.select(),
      onkeydown: (event) => this.#onKey(event as KeyboardEvent),
    });
    this.#slider = element('input', {
      type: 'range',
      min: 0,
      max: this.#scale.steps,
      'aria-label': `${parameterLabel(name)}, slider`,
      oninput: () => this.#drag(),
      onchange: () => this.#follow(),
      // One drag, or one key held down, is one gesture.
      onpointerdown: () => this.#gestures++,
      onkeydown: (event) => {
        if (!(event as KeyboardEvent).repeat) this.#gestures++;
      },
    });
    const unit = element('span', { class: 'field-unit' }, this.row.unit);
    this.assemble(this.input, unit, this.#slider);
  }

  protected display(value: Value): void {
    const text = value === 0 && this.row.zero ? 'off' : fieldText(value as number, this.row.unit);
    if (this.input.value !== text) this.input.value = text;
    this.#follow();
  }

  override showOrigin(): void {
    super.showOrigin();
    const origin = this.#scale.positionOf(this.context.origin[this.parameter] as number);
    this.#slider.style.setProperty('--origin', String(origin / this.#scale.steps));
  }

  #type(): void {
    const typed = readTyped(this.input.value, this.row.unit);
    if ('problem' in typed) this.showProblem(typed.problem);
    else if (this.propose(typed.value, null)) this.display(this.value);
  }

  #drag(): void {
    const value = this.#scale.valueAt(this.#slider.valueAsNumber);
    this.propose(value, `${this.parameter} ${this.#gestures}`);
  }

  /** Puts the slider where the value in force is. */
  #follow(): void {
    this.#slider.value = String(this.#scale.positionOf(this.value as number));
    this.#slider.setAttribute('aria-valuetext', valueText(this.row, this.value));
  }

  #onKey({ key }: KeyboardEvent): void {
    if (key === 'Enter') this.#type();
    if (key === 'Escape') this.updateDisplay();
  }
}
