import { isInUse } from '../../shared/axis/inUse.ts';
import { parameterLabel } from '../../shared/core/parameters/labels.ts';
import type { NumberRow } from '../../shared/core/parameters/row.ts';
import { PARAMETER_GROUPS, type Parameters } from '../../shared/core/parameters/table.ts';
import { spreadEntryRow } from '../../shared/tolerance/checkTolerance.ts';
import {
  type NumberName,
  SPREAD_KINDS,
  SPREADABLE,
  type Spread,
  type SpreadKind,
} from '../../shared/tolerance/spread.ts';
import { button, element } from '../ui/dom.ts';
import { Field } from '../ui/fields/field.ts';
import { grouped } from '../ui/picker.ts';
import { offeredSpread } from './offeredStudy.ts';

const ENTRY_LABELS: Readonly<Record<string, string>> = {
  share: '±',
  from: 'from',
  to: 'to',
  mean: 'mean',
  deviation: 'σ',
  cut: 'cut at σ ×',
};

let lineCount = 0;

/** One parameter that spreads: which, how, and by how much. */
export class SpreadLine {
  readonly element: HTMLElement;
  readonly #parameters: () => Parameters;
  readonly #name: HTMLSelectElement;
  readonly #kind: HTMLSelectElement;
  readonly #place = element('span', { class: 'spread-values' });
  readonly #problem = element('p', { class: 'field-problem', role: 'alert' });
  readonly #id = `spread-${++lineCount}`;
  #fields: readonly (readonly [entry: string, field: Field<number>])[] = [];

  constructor(
    [name, spread]: readonly [NumberName, Spread],
    parameters: () => Parameters,
    onRemove: (line: SpreadLine) => void,
  ) {
    this.#parameters = parameters;
    this.#name = element(
      'select',
      { id: `${this.#id}-name`, 'aria-label': 'Parameter', onchange: () => this.#offer() },
      ...grouped(choicesOf(parameters(), name)),
    );
    this.#name.value = name;
    this.#kind = element(
      'select',
      { id: `${this.#id}-kind`, 'aria-label': 'How it spreads', onchange: () => this.#offer() },
      ...Object.entries(SPREAD_KINDS).map(([value, { label }]) => element('option', { value }, label)),
    );
    this.element = element(
      'li',
      { class: 'spread-line' },
      this.#name,
      this.#kind,
      this.#place,
      button('Remove', () => onRemove(this), { 'aria-label': `Remove ${parameterLabel(name)}` }),
      this.#problem,
    );
    this.#show(spread);
  }

  get name(): NumberName {
    return this.#name.value as NumberName;
  }

  /** As it is entered; null while a number of it is not legal, which its field then says. */
  read(): Spread | null {
    this.showProblem(null);
    const values: Record<string, number> = {};
    for (const [entry, field] of this.#fields) {
      const value = field.read();
      if (value === undefined) {
        field.focus();
        return null;
      }
      values[entry] = value;
    }
    return { kind: this.#kind.value, ...values } as Spread;
  }

  showProblem(text: string | null): void {
    this.#problem.textContent = text ?? '';
  }

  /** What another parameter or another manner of spreading begins with. */
  #offer(): void {
    this.showProblem(null);
    this.#show(offeredSpread(this.name, this.#parameters()[this.name], this.#kind.value as SpreadKind));
  }

  #show(spread: Spread): void {
    this.#kind.value = spread.kind;
    const { kind: _, ...values } = spread;
    this.#fields = Object.entries(values).map(([entry, value]) => {
      const row: NumberRow = spreadEntryRow(entry, this.name);
      const label = ENTRY_LABELS[entry] ?? entry;
      const field = new Field<number>(row, { id: `${this.#id}-${entry}`, label });
      field.show(value);
      return [entry, field] as const;
    });
    this.#place.replaceChildren(...this.#fields.map(([, field]) => field.element));
  }
}

/** Parameters in use, in the groups of the panel, and the one that is chosen. */
function choicesOf(p: Parameters, chosen: NumberName) {
  return PARAMETER_GROUPS.flatMap(({ title, rows }) =>
    SPREADABLE.filter((name) => name in rows && (name === chosen || isInUse(name, p))).map((name) => ({
      value: name,
      text: parameterLabel(name),
      group: title,
    })),
  );
}
