import { DATASHEET_FORMS } from '../../shared/axis/datasheetForms.ts';
import type { Row, RowValue } from '../../shared/core/parameters/row.ts';
import { type ParameterName, type Parameters, parameterRow } from '../../shared/core/parameters/table.ts';
import { element } from '../ui/dom.ts';
import { Field } from '../ui/fields/field.ts';
import { otherFormsText, parameterLabel, rangeText, valueText } from '../ui/fields/label.ts';
import { Slider } from '../ui/fields/slider.ts';

/** Where the fields of the panel get their values, and how a change reaches the bench. */
export interface FieldContext {
  /** The value in force. */
  value(name: ParameterName): RowValue;
  /** What the field goes back to. */
  origin(name: ParameterName): RowValue;
  /** All values in force. */
  parameters(): Parameters;
  /**
   * Asks for a value. Returns null if it is now in force, or what is wrong with it. Values proposed under one
   * gesture are one step of the undo history.
   */
  propose(name: ParameterName, value: RowValue, gesture: string | null): string | null;
}

/** One parameter in the panel: its field, and for a number a slider beneath. */
export class ParameterField {
  readonly parameter: ParameterName;
  readonly element: HTMLElement;
  readonly #row: Row;
  readonly #context: FieldContext;
  readonly #field: Field;
  readonly #slider: Slider | null;

  constructor(parameter: ParameterName, context: FieldContext) {
    const row = parameterRow(parameter);
    const label = parameterLabel(parameter);
    this.parameter = parameter;
    this.#row = row;
    this.#context = context;
    this.#field = new Field(row, {
      id: `field-${parameter}`,
      label,
      symbol: row.symbol,
      zeroText: 'off',
      description: () => this.description,
      others: { forms: DATASHEET_FORMS[parameter] ?? [], parameters: () => context.parameters() },
      onValue: (value) => this.#propose(value, null),
      onReset: () => this.#propose(context.origin(parameter), null),
    });
    if (row.restart) this.#field.name.append(element('span', { class: 'field-restart' }, 'restarts'));
    this.#slider =
      row.kind === 'number'
        ? new Slider(row, label, (value, gesture) => this.#propose(value, `${parameter} ${gesture}`))
        : null;
    this.element = this.#field.element;
    if (this.#slider) this.#field.addBeneath(this.#slider.element);
    this.show();
  }

  get isChanged(): boolean {
    return this.#value !== this.#origin;
  }

  get #value(): RowValue {
    return this.#context.value(this.parameter);
  }

  get #origin(): RowValue {
    return this.#context.origin(this.parameter);
  }

  /** Meaning, symbol, range and default in one paragraph. */
  get description(): string {
    return `${descriptionOf(this.#row)}${otherFormsText(DATASHEET_FORMS[this.parameter])}`;
  }

  focus(): void {
    this.#field.focus();
  }

  /** Shows the value in force, after it changed here or elsewhere. */
  show(): void {
    this.#field.show(this.#value);
    if (typeof this.#value === 'number') this.#slider?.show(this.#value);
    this.showOrigin();
  }

  /** Marks the field if it differs from the scene. */
  showOrigin(): void {
    const text = this.isChanged ? `${valueText(this.#row, this.#origin)}, value of the scene` : null;
    this.#field.showOrigin(text);
    if (typeof this.#origin === 'number') this.#slider?.markOrigin(this.#origin);
  }

  #propose(value: RowValue, gesture: string | null): void {
    const problem = this.#context.propose(this.parameter, value, gesture);
    this.#field.showProblem(problem);
    // A number stays to be corrected; what was chosen and is not taken goes back.
    if (problem !== null && this.#row.kind !== 'number') this.#field.restore();
  }
}

function descriptionOf(row: Row): string {
  const symbol = row.symbol ? ` (${row.symbol.replace('_', '')})` : '';
  const restarts = row.restart ? ' A change restarts the run.' : '';
  return `${row.meaning}${symbol}. ${rangeText(row)} Default ${valueText(row, row.default)}.${restarts}`;
}
