import { DATASHEET_FORMS } from '../../../shared/axis/datasheetForms.ts';
import { isInUse } from '../../../shared/axis/inUse.ts';
import { backEmfWarning } from '../../../shared/axis/warnings.ts';
import { shortest } from '../../../shared/core/format.ts';
import { rowIn } from '../../../shared/core/parameters/row.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type Parameters,
  parameterRow,
} from '../../../shared/core/parameters/table.ts';
import { problemTexts } from '../../../shared/core/problem.ts';
import type { Preset } from '../../../shared/core/scene.ts';
import { onPage, sentenceText } from '../../../shared/core/sentence.ts';
import type { UnitSystem } from '../../../shared/core/unitSystem.ts';
import { unitIn } from '../../../shared/core/units.ts';
import { checkDatasheet } from '../../../shared/study/checkCandidate.ts';
import { DATASHEET_GROUPS, DATASHEET_NAMES, type DatasheetName } from '../../../shared/study/datasheet.ts';
import { Dialog } from '../../ui/dialog.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { Field } from '../../ui/fields/field.ts';
import { parameterLabel } from '../../ui/fields/label.ts';

/** The datasheet that is open. */
interface Datasheet {
  readonly preset: Preset;
  /** For one motor, by the defaults and the preset. */
  readonly usual: Parameters;
  readonly units: UnitSystem;
  /** What differs from the preset. */
  own: ParameterChanges;
}

interface DatasheetField {
  readonly field: Field;
  /** What the preset has, where it is another value. */
  readonly usual: HTMLElement;
}

const HELP =
  'Enter the datasheet values of one motor; fields left alone keep the value of the preset. Units may be typed: “12 lbf”, “5 mohm”, “71 N/Apk”. So may what a datasheet states instead: a motor constant, “24 N/√W”, or a stall force, “90 N stall”.';

/** Values from the datasheet of one motor, typed over those of a preset. */
export class DatasheetDialog {
  readonly #onUse: (own: ParameterChanges) => string | null;
  readonly #caution = element('p', { class: 'datasheet-caution', role: 'status' });
  readonly #problem = element('p', { class: 'dialog-problems', role: 'alert' });
  readonly #fields: ReadonlyMap<DatasheetName, DatasheetField>;
  readonly #groups: readonly { readonly section: HTMLElement; readonly names: readonly DatasheetName[] }[];
  readonly #dialog = new Dialog({
    title: 'Own datasheet',
    class: 'wide datasheet',
    closeLabel: 'Cancel',
    buttons: [
      button('Use these values', () => this.#use(), { class: 'primary' }),
      button('Reset all to preset values', () => this.#clear()),
    ],
  });
  #sheet: Datasheet | null = null;

  /** `onUse` gets what differs from the preset; it returns what is wrong with it, or null. */
  constructor(onUse: (own: ParameterChanges) => string | null) {
    this.#onUse = onUse;
    this.#fields = new Map(DATASHEET_NAMES.map((name) => [name, this.#createField(name)]));
    this.#groups = DATASHEET_GROUPS.map(({ title, names }) => {
      const fields = names.flatMap((name) => this.#fields.get(name)?.field.element ?? []);
      return {
        section: element('section', { class: 'job-group' }, element('h3', {}, title), ...fields),
        names,
      };
    });
    this.#dialog.fill(
      element('p', {}, HELP),
      element('div', { class: 'job-groups' }, ...this.#groups.map(({ section }) => section)),
      element('div', { class: 'datasheet-foot' }, this.#caution, this.#problem, this.#dialog.buttons),
    );
  }

  open(letter: string, preset: Preset, own: ParameterChanges, units: UnitSystem): void {
    this.#sheet = { preset, usual: { ...defaultParameters(), ...preset.parameters }, units, own };
    this.#dialog.title = `Candidate ${letter}: own datasheet over “${preset.title}”`;
    this.#fill(this.#sheet);
    this.#dialog.open();
  }

  #createField(name: DatasheetName): DatasheetField {
    const row = parameterRow(name);
    const field = new Field(row, {
      id: `datasheet-${name}`,
      label: parameterLabel(name),
      symbol: row.symbol,
      others: {
        forms: DATASHEET_FORMS[name] ?? [],
        parameters: () => ({ ...defaultParameters(), ...this.#sheet?.usual, ...this.#sheet?.own }),
      },
      onValue: (value) => this.#take(name, value as number),
    });
    const usual = element('p', { class: 'field-note' });
    field.element.append(usual);
    return { field, usual };
  }

  #take(name: DatasheetName, value: number): void {
    if (!this.#sheet) return;
    const { [name]: _before, ...others } = this.#sheet.own;
    this.#sheet.own = value === this.#sheet.usual[name] ? others : { ...others, [name]: value };
    this.#showWhatFollows(this.#sheet);
  }

  #clear(): void {
    if (!this.#sheet) return;
    this.#sheet.own = {};
    this.#fill(this.#sheet);
  }

  #fill(sheet: Datasheet): void {
    const values = { ...sheet.usual, ...sheet.own };
    for (const [name, { field }] of this.#fields) {
      field.show(values[name], rowIn(sheet.units, parameterRow(name)));
      field.restore();
      field.showProblem(null);
      field.element.hidden = !isOfPreset(name, sheet.usual);
    }
    for (const { section, names } of this.#groups)
      section.hidden = names.every((name) => !isOfPreset(name, sheet.usual));
    this.#showWhatFollows(sheet);
  }

  /** Problems between the values, which may wait for each other until they are used, and what does not fit together. */
  #showWhatFollows({ own, preset, usual, units }: Datasheet): void {
    const checked = checkDatasheet(own, preset);
    const problems = 'problems' in checked ? checked.problems : [];
    setText(this.#problem, problemTexts(problems, onPage(units)).join(' '));
    const warning = backEmfWarning({ ...usual, ...own });
    setText(this.#caution, warning === null ? '' : sentenceText(warning, onPage(units)));
    for (const [name, field] of this.#fields) {
      const row = parameterRow(name);
      const text =
        name in own && row.kind === 'number' ? shortest(usual[name], unitIn(units, row.unit)) : null;
      setText(field.usual, text === null ? '' : `Preset: ${text}`);
      field.field.showOrigin(text);
    }
  }

  #use(): void {
    if (!this.#sheet) return;
    const unread = [...this.#fields.values()].find(({ field }) => field.hasProblem);
    if (unread) {
      unread.field.focus();
      return;
    }
    const problem = this.#onUse(this.#sheet.own);
    if (problem === null) this.#dialog.close();
    else setText(this.#problem, problem);
  }
}

/** What means something for a motor of this kind; a lead only where there is a screw. */
function isOfPreset(name: DatasheetName, p: Parameters): boolean {
  return name === 'lead' ? p.lead > 0 : isInUse(name, p);
}
