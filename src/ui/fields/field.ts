import type { Row, RowValue } from '../../../shared/core/parameters/row.ts';
import { button, element, setAttribute, setHidden, setText, symbolNode } from '../dom.ts';
import { afterPress, watchPresses } from './afterPress.ts';
import { rangeText } from './label.ts';
import type { OtherForms } from './typedQuantity.ts';
import { type Widget, widgetFor } from './widgets.ts';

interface FieldOptions<Value extends RowValue | null> {
  /** Of the input; the place for problems is `${id}-problem`. */
  readonly id: string;
  readonly label: string;
  /** Shown beside the label, with its index lowered. */
  readonly symbol?: string;
  /** What an empty number means, which then is null; without it a number may not be empty. */
  readonly empty?: string;
  /** What is written in place of a legal zero; an emptied field means the same. */
  readonly zeroText?: string;
  /** Meaning and range, for tooltip and screen reader; by default those of the row in its present unit. */
  readonly description?: (row: Row) => string;
  /** Other quantities that may be typed in place of the row's own. */
  readonly others?: OtherForms;
  /** Hears each value that is legal by itself; whoever refuses it says so with `showProblem`. */
  readonly onValue?: (value: Value) => void;
  /** Offers a way back; called when it is taken. */
  readonly onReset?: () => void;
}

/**
 * One row of a table as a field: label and symbol, input with unit, meaning and range, what is wrong, and a way back. A refused value
 * stays as it was typed beside what is wrong with it; Escape brings back the value in force.
 */
export class Field<Value extends RowValue | null = RowValue> {
  readonly element: HTMLElement;
  /** Where label and symbol stand. */
  readonly name: HTMLElement;
  readonly input: HTMLElement;
  readonly #options: FieldOptions<Value>;
  readonly #widget: Widget;
  readonly #problem: HTMLElement;
  /** How the value follows from what was typed. */
  readonly #note = element('p', { class: 'field-note', role: 'status' });
  readonly #reset: HTMLButtonElement | null;
  #row: Row;
  #value: Value | null = null;

  constructor(row: Row, options: FieldOptions<Value>) {
    watchPresses();
    const { id, label, symbol, onReset } = options;
    this.#options = options;
    this.#row = row;
    this.#problem = element('p', { class: 'field-problem', id: `${id}-problem`, role: 'alert' });
    this.#widget = widgetFor(row, {
      id,
      problemId: this.#problem.id,
      empty: options.empty,
      zeroText: options.zeroText,
      others: options.others,
    });
    this.input = this.#widget.input;
    this.input.addEventListener('change', () => afterPress(() => this.#commit()));
    this.input.addEventListener('keydown', (event) => this.#onKey(event));
    this.#reset = onReset ? resetButton(label, onReset) : null;
    const name = element('label', { for: id }, label);
    if (symbol) name.append(' ', symbolNode(symbol));
    this.name = element('div', { class: 'field-name' }, name);
    this.element = element('div', { class: `field field-${row.kind}` }, this.name);
    this.element.append(
      ...(this.#reset ? [this.#reset] : []),
      ...this.#widget.elements,
      this.#note,
      this.#problem,
    );
    this.#describe();
  }

  /** The value in force as it was shown last. */
  get value(): Value | null {
    return this.#value;
  }

  /** Shows the value in force. What is being typed stays while only other fields change. `row`: the same row in another unit. */
  show(value: Value, row = this.#row): void {
    const isBeingTyped = document.activeElement === this.input || this.hasProblem;
    const isOther = value !== this.#value;
    this.#value = value;
    if (row !== this.#row) {
      this.#row = row;
      this.#widget.setRow(row);
    }
    this.#describe();
    if (isOther) setText(this.#note, '');
    if (isOther || !isBeingTyped) this.#write();
  }

  /** The legal value; undefined while there is none, which the field then says. */
  read(): Value | undefined {
    const reading = this.#widget.read();
    this.showProblem('problem' in reading ? reading.problem : null);
    if ('problem' in reading) {
      setText(this.#note, '');
      return undefined;
    }
    if (reading.value !== this.#value) setText(this.#note, reading.note ?? '');
    return reading.value as Value;
  }

  showProblem(problem: string | null): void {
    setText(this.#problem, problem ?? '');
    setAttribute(this.input, 'aria-invalid', String(problem !== null));
  }

  get hasProblem(): boolean {
    return this.input.getAttribute('aria-invalid') === 'true';
  }

  /** Brings back the value in force, whatever is typed or chosen; a problem stays in sight. */
  restore(): void {
    this.#widget.write(this.#value);
  }

  /** Marks the field as changed and offers the way back, which leads to `origin`; null: it is not changed. */
  showOrigin(origin: string | null): void {
    this.element.classList.toggle('is-changed', origin !== null);
    if (!this.#reset) return;
    setHidden(this.#reset, origin === null);
    setAttribute(this.#reset, 'title', origin === null ? '' : `Back to ${origin}`);
  }

  /** Puts another way to enter the value, e.g. a slider, beneath the input. */
  addBeneath(widget: HTMLElement): void {
    this.#problem.before(widget);
  }

  focus(): void {
    this.input.focus();
  }

  set disabled(disabled: boolean) {
    this.input.toggleAttribute('disabled', disabled);
  }

  /** Takes what was entered. */
  #commit(): void {
    const value = this.read();
    if (value === undefined) return;
    const before = this.#value;
    this.#value = value;
    this.#options.onValue?.(value);
    if (this.hasProblem) this.#value = before;
    else this.#write();
  }

  #onKey({ key }: KeyboardEvent): void {
    if (this.#row.kind !== 'number') return;
    if (key === 'Enter') this.#commit();
    if (key === 'Escape') this.#write();
  }

  #write(): void {
    this.#widget.write(this.#value);
    this.showProblem(null);
  }

  #describe(): void {
    const { description = rowDescription } = this.#options;
    const text = description(this.#row);
    setAttribute(this.element, 'title', text);
    setAttribute(this.input, 'aria-description', text);
  }
}

function rowDescription(row: Row): string {
  return `${row.meaning}. ${rangeText(row)}`;
}

function resetButton(label: string, onReset: () => void): HTMLButtonElement {
  const made = button('Reset', onReset, { class: 'field-reset', 'aria-label': `Reset ${label}` });
  made.hidden = true;
  return made;
}
