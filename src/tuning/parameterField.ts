import { Controller, type GUI } from 'lil-gui';
import type { Row, RowValue as Value } from '../../shared/core/parameters/row.ts';
import { type ParameterName, type Parameters, parameterRow } from '../../shared/core/parameters/table.ts';
import { button, element, setText, symbolNode } from '../ui/dom.ts';
import { parameterLabel, rangeText, valueText } from '../ui/fields/label.ts';

/** What a field needs from the panel it stands in. */
export interface FieldContext {
  /** The parameters in force; the fields show them and never write them. */
  readonly values: Parameters;
  /** What each field goes back to. */
  readonly origin: Parameters;
  /**
   * Asks for a value. Returns null if it is now in force, or what is wrong with it. Values proposed under one
   * gesture are one step of the undo history.
   */
  propose(name: ParameterName, value: Value, gesture: string | null): string | null;
}

/** One row of the table in the panel: name, widget, a way back, and a place for what is wrong. */
export abstract class ParameterField extends Controller {
  readonly parameter: ParameterName;
  readonly row: Row;
  protected readonly context: FieldContext;
  readonly #reset: HTMLButtonElement;
  readonly #problem: HTMLElement;
  /** The element that takes the focus and the label. */
  protected abstract readonly input: HTMLElement;

  constructor(folder: GUI, name: ParameterName, context: FieldContext, kind: string) {
    super(folder, context.values, name, 'field');
    this.parameter = name;
    this.row = parameterRow(name);
    this.context = context;
    this.domElement.classList.add(kind);
    const label = parameterLabel(name);
    this.#reset = button('Reset', () => this.propose(this.context.origin[name], null), {
      class: 'field-reset',
      'aria-label': `Reset ${label}`,
    });
    this.#problem = element('p', { class: 'field-problem', id: `${this.id}-problem`, role: 'alert' });
  }

  protected get id(): string {
    return `field-${this.parameter}`;
  }

  get value(): Value {
    return this.context.values[this.parameter];
  }

  /** Puts the pieces together; for the end of the constructor of each kind of field. */
  protected assemble(...widgets: Node[]): void {
    const { row, input } = this;
    input.id = this.id;
    input.setAttribute('aria-description', this.text);
    this.domElement.title = this.text;
    const label = element('label', { for: this.id }, parameterLabel(this.parameter));
    if (row.symbol) label.append(' ', symbolNode(row.symbol));
    this.$name.replaceChildren(label);
    if (row.restart) this.$name.append(element('span', { class: 'field-restart' }, 'restarts'));
    this.$widget.append(this.#reset, ...widgets);
    this.domElement.append(this.#problem);
    this.updateDisplay();
  }

  /** Meaning, symbol, range and default in one paragraph. */
  get text(): string {
    const { meaning, symbol, restart } = this.row;
    const called = symbol ? ` (${symbol.replace('_', '')})` : '';
    const restarts = restart ? ' A change restarts the run.' : '';
    return `${meaning}${called}. ${rangeText(this.row)} Default ${valueText(this.row, this.row.default)}.${restarts}`;
  }

  focus(): void {
    this.input.focus();
  }

  /** Asks for a value and shows what is wrong, if anything is. */
  protected propose(value: Value, gesture: string | null): boolean {
    const problem = this.context.propose(this.parameter, value, gesture);
    this.showProblem(problem);
    return problem === null;
  }

  protected showProblem(problem: string | null): void {
    setText(this.#problem, problem ?? '');
    this.domElement.classList.toggle('has-problem', problem !== null);
    this.input.setAttribute('aria-invalid', String(problem !== null));
    this.input.setAttribute('aria-describedby', problem === null ? '' : this.#problem.id);
  }

  /** Shows the value in force, after it changed here or elsewhere. */
  override updateDisplay(): this {
    this.showProblem(null);
    this.display(this.value);
    this.showOrigin();
    return this;
  }

  /** Marks the field if it differs from the scene. */
  showOrigin(): void {
    const origin = this.context.origin[this.parameter];
    const changed = this.value !== origin;
    this.domElement.classList.toggle('is-changed', changed);
    this.#reset.hidden = !changed;
    this.#reset.title = `Back to ${valueText(this.row, origin)}, as the scene has it`;
  }

  protected abstract display(value: Value): void;
}
