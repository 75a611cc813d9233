import type {
  ChoiceRow,
  NumberRow,
  Row,
  SwitchRow,
  RowValue as Value,
} from '../../../shared/core/parameters/row.ts';
import type { UnitSystem } from '../../../shared/core/units.ts';
import { rowIn } from '../../../shared/study/checkJob.ts';
import { element, setText, symbolNode } from '../../ui/dom.ts';
import { rangeText } from '../../ui/fields/label.ts';
import { QuantityInput } from '../../ui/fields/quantityInput.ts';

/** One row of a table in a form: name, widget, and a place for what is wrong. */
export interface RowField {
  readonly element: HTMLElement;
  /** The value in force. */
  show(value: Value, system: UnitSystem): void;
  showProblem(problem: string | null): void;
}

interface Wanted {
  readonly id: string;
  readonly text: string;
  /** Hears each value that is legal by itself. */
  onValue(value: Value): void;
}

export function createRowField(row: Row, wanted: Wanted): RowField {
  const made =
    row.kind === 'number'
      ? numberField(row, wanted)
      : row.kind === 'choice'
        ? choiceField(row, wanted)
        : switchField(row, wanted);
  made.element.title = made.describe(row);
  return {
    ...made,
    show(value, system) {
      made.element.title = made.describe(rowIn(system, row));
      made.show(value, system);
    },
  };
}

interface MadeField extends RowField {
  describe(row: Row): string;
}

function numberField(row: NumberRow, { id, text, onValue }: Wanted): MadeField {
  const input = new QuantityInput(text, row, (value) => onValue(value as number), { id });
  const [label, box] = input.elements as [HTMLElement, HTMLElement];
  let shown: Value | null = null;
  nameIt(label, row);
  return {
    element: element('div', { class: 'row-field' }, ...input.elements),
    describe: (shown) => describe(shown, box),
    show(value, system) {
      input.row = rowIn(system, row);
      // What is being typed stays while other fields change.
      if (!input.isUnderWay || value !== shown) input.value = value as number;
      shown = value;
    },
    showProblem: (problem) => input.show(problem),
  };
}

function choiceField(row: ChoiceRow, { id, text, onValue }: Wanted): MadeField {
  const select = element(
    'select',
    { id, 'aria-describedby': `${id}-problem`, onchange: () => onValue(select.value) },
    ...row.options.map((option) => element('option', { value: option }, option)),
  );
  return widgetField(row, id, text, select, (value) => {
    select.value = String(value);
  });
}

function switchField(row: SwitchRow, { id, text, onValue }: Wanted): MadeField {
  const box = element('input', {
    type: 'checkbox',
    id,
    'aria-describedby': `${id}-problem`,
    onchange: () => onValue(box.checked),
  });
  return widgetField(row, id, text, box, (value) => {
    box.checked = value === true;
  });
}

function widgetField(
  row: Row,
  id: string,
  text: string,
  widget: HTMLElement,
  showValue: (value: Value) => void,
): MadeField {
  const problem = element('p', { class: 'field-problem', id: `${id}-problem`, role: 'alert' });
  const label = element('label', { for: id }, text);
  nameIt(label, row);
  const showProblem = (text: string | null) => {
    setText(problem, text ?? '');
    widget.setAttribute('aria-invalid', String(text !== null));
  };
  return {
    element: element('div', { class: 'row-field' }, label, widget, problem),
    describe: (shown) => describe(shown, widget),
    show(value) {
      showValue(value);
      showProblem(null);
    },
    showProblem,
  };
}

function nameIt(label: HTMLElement, { symbol }: Row): void {
  if (symbol) label.append(' ', symbolNode(symbol));
}

/** Meaning and range, for the pointer and for whoever listens. */
function describe(row: Row, input: HTMLElement): string {
  const label = `${row.meaning}. ${rangeText(row)}`;
  input.setAttribute('aria-description', label);
  return label;
}
