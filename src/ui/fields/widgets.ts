import { checkNumber } from '../../../shared/core/check.ts';
import {
  type ChoiceRow,
  type NumberRow,
  optionText,
  type Row,
  type RowValue,
  unitWithForm,
} from '../../../shared/core/parameters/row.ts';
import { onPage, sentenceText } from '../../../shared/core/sentence.ts';
import { element, setText } from '../dom.ts';
import { fieldText } from './fieldText.ts';
import { type OtherForms, readTyped } from './typedQuantity.ts';

/** The row states the unit in which a person types. */
const AS_ROW = onPage('metric');

type Reading = { readonly value: RowValue | null; readonly note?: string } | { readonly problem: string };

/** What the value of a row is entered with. */
export interface Widget {
  /** What takes focus, label and change. */
  readonly input: HTMLElement;
  readonly elements: readonly HTMLElement[];
  read(): Reading;
  write(value: RowValue | null): void;
  /** The same row in another unit; whoever changes it writes the value again. */
  setRow(row: Row): void;
}

interface WidgetOptions {
  readonly id: string;
  readonly problemId: string;
  readonly empty?: string | undefined;
  /** What stands for zero where zero means none; an emptied field then means the same. */
  readonly zeroText?: string | undefined;
  readonly others?: OtherForms | undefined;
}

export function widgetFor(row: Row, options: WidgetOptions): Widget {
  switch (row.kind) {
    case 'number':
      return numberWidget(row, options);
    case 'choice':
      return choiceWidget(row, options);
    case 'switch':
      return switchWidget(options);
  }
}

/** A number, typed with or without a unit. */
function numberWidget(first: NumberRow, { id, problemId, empty, zeroText, others }: WidgetOptions): Widget {
  let row = first;
  const input = element('input', {
    type: 'text',
    id,
    inputmode: 'decimal',
    autocomplete: 'off',
    spellcheck: 'false',
    placeholder: empty,
    'aria-describedby': problemId,
    onfocus: () => input.select(),
  });
  const unit = element('span', { class: 'field-unit' }, unitWithForm(row));
  /** What was written last, which may have fewer digits than its value. */
  let written: { readonly text: string; readonly value: RowValue | null } | null = null;
  return {
    input,
    elements: [input, unit],
    read() {
      const text = input.value.trim();
      if (text === '' && empty !== undefined) return { value: null };
      if (text === '' && zeroText !== undefined && row.zero) return { value: 0 };
      if (text === written?.text) return { value: written.value };
      const typed = readTyped(text, row, others);
      if ('problem' in typed) return typed;
      const checked = checkNumber(typed.value, row);
      return 'wrong' in checked
        ? { problem: sentenceText(checked.wrong, AS_ROW) }
        : { ...typed, value: checked.legal };
    },
    write(value) {
      const text = numberText(value, row, zeroText);
      setText(unit, unitWithForm(row));
      written = { text, value };
      if (input.value !== text) input.value = text;
    },
    setRow(next) {
      if (next.kind !== 'number') return;
      row = next;
    },
  };
}

function numberText(value: RowValue | null, { unit, zero }: NumberRow, zeroText = '0'): string {
  if (typeof value !== 'number') return '';
  return value === 0 && zero ? zeroText : fieldText(value, unit);
}

/** One of a few options. */
function choiceWidget(row: ChoiceRow, { id, problemId }: WidgetOptions): Widget {
  const input = element(
    'select',
    { id, 'aria-describedby': problemId },
    ...row.options.map((option) => element('option', { value: option }, optionText(row, option))),
  );
  return {
    input,
    elements: [input],
    read: () => ({ value: input.value }),
    write(value) {
      input.value = String(value);
    },
    setRow() {},
  };
}

/** On or off. */
function switchWidget({ id, problemId }: WidgetOptions): Widget {
  const input = element('input', { type: 'checkbox', id, 'aria-describedby': problemId });
  return {
    input,
    elements: [input],
    read: () => ({ value: input.checked }),
    write(value) {
      input.checked = value === true;
    },
    setRow() {},
  };
}
