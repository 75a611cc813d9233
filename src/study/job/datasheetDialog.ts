import { backEmfWarning } from '../../../shared/axis/warnings.ts';
import { shortest } from '../../../shared/core/format.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type Parameters,
  parameterRow,
} from '../../../shared/core/parameters/table.ts';
import type { Preset } from '../../../shared/core/scene.ts';
import { type UnitSystem, unitIn } from '../../../shared/core/units.ts';
import { checkDatasheet } from '../../../shared/study/checkCandidate.ts';
import { DATASHEET_GROUPS, DATASHEET_NAMES, type DatasheetName } from '../../../shared/study/datasheet.ts';
import { isInUse } from '../../bench/relevance.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { inPanelText, parameterLabel } from '../../ui/fields/label.ts';
import { createRowField, type RowField } from './rowField.ts';

export interface DatasheetDialog {
  readonly element: HTMLDialogElement;
  open(letter: string, preset: Preset, own: ParameterChanges, units: UnitSystem): void;
}

interface DatasheetField extends RowField {
  /** What the preset has, where it is another value. */
  readonly usual: HTMLElement;
}

/**
 * Values from the datasheet of one motor, typed over those of a preset. `onUse` gets what differs from the preset; it returns what is
 * wrong with it, or null.
 */
export function createDatasheetDialog(onUse: (own: ParameterChanges) => string | null): DatasheetDialog {
  let preset: Preset;
  let units: UnitSystem = 'metric';
  let own: ParameterChanges = {};
  const title = element('h2', { id: 'datasheet-title', tabindex: -1, autofocus: true });
  const caution = element('p', { class: 'datasheet-caution', role: 'status' });
  const problem = element('p', { class: 'dialog-problems', role: 'alert' });
  const fields = Object.fromEntries(DATASHEET_NAMES.map((name) => [name, fieldOf(name)])) as Record<
    DatasheetName,
    DatasheetField
  >;
  const groups = DATASHEET_GROUPS.map(({ title: text, names }) => {
    const section = element('section', { class: 'job-group' }, element('h3', {}, text));
    section.append(...names.map((name) => fields[name].element));
    return { section, names: names as readonly DatasheetName[] };
  });
  const dialog = element(
    'dialog',
    { class: 'dialog wide datasheet', 'aria-labelledby': 'datasheet-title' },
    title,
    element(
      'p',
      {},
      'Type what the datasheet prints for one motor; what is left alone stays as the preset has it. Units may be typed: “12 lbf”, “5 mohm”.',
    ),
    element('div', { class: 'job-groups' }, ...groups.map(({ section }) => section)),
    element(
      'div',
      { class: 'datasheet-foot' },
      caution,
      problem,
      element(
        'div',
        { class: 'dialog-ways' },
        button('Use these values', () => use(), { class: 'primary' }),
        button('All as the preset has them', () => {
          own = {};
          fill();
        }),
        button('Cancel', () => dialog.close()),
      ),
    ),
  );

  function fieldOf(name: DatasheetName): DatasheetField {
    const field = createRowField(parameterRow(name), {
      id: `datasheet-${name}`,
      text: parameterLabel(name),
      onValue: (value) => take(name, value as number),
    });
    const usual = element('p', { class: 'row-field-usual' });
    field.element.append(usual);
    return { ...field, usual };
  }

  /** As the preset has them, for one motor. */
  const usualValues = (): Parameters => ({ ...defaultParameters(), ...preset.parameters });

  function take(name: DatasheetName, value: number): void {
    const { [name]: _before, ...others } = own;
    const next = value === usualValues()[name] ? others : { ...own, [name]: value };
    own = next;
    showWhatFollows();
  }

  /** Problems between the values, which may wait for each other until they are used, and what does not fit together. */
  function showWhatFollows(): void {
    const usual = usualValues();
    const checked = checkDatasheet(own, preset);
    const problems = 'problems' in checked ? checked.problems : [];
    setText(problem, problems.map(({ message }) => inPanelText(message)).join(' '));
    const warning = backEmfWarning({ ...usual, ...own });
    setText(caution, warning === null ? '' : inPanelText(warning));
    for (const name of DATASHEET_NAMES) {
      const row = parameterRow(name);
      const isOwn = name in own && row.kind === 'number';
      setText(fields[name].usual, isOwn ? `Preset: ${shortest(usual[name], unitIn(units, row.unit))}` : '');
      fields[name].element.classList.toggle('is-own', isOwn);
    }
  }

  function fill(): void {
    const values = { ...usualValues(), ...own };
    for (const { section, names } of groups) {
      for (const name of names) {
        fields[name].show(values[name], units);
        fields[name].element.hidden = !isOfPreset(name, usualValues());
      }
      section.hidden = names.every((name) => fields[name].element.hidden);
    }
    showWhatFollows();
  }

  function use(): void {
    const unread = dialog.querySelector<HTMLElement>('[aria-invalid="true"]');
    if (unread) {
      unread.focus();
      return;
    }
    const wrong = onUse(own);
    if (wrong === null) dialog.close();
    else setText(problem, inPanelText(wrong));
  }

  return {
    element: dialog,
    open(letter, nextPreset, nextOwn, system) {
      preset = nextPreset;
      own = nextOwn;
      units = system;
      setText(title, `Candidate ${letter}: own datasheet over “${preset.title}”`);
      fill();
      dialog.showModal();
    },
  };
}

/** What means something for a motor of this kind; a lead only where there is a screw. */
function isOfPreset(name: DatasheetName, p: Parameters): boolean {
  return name === 'lead' ? p.lead > 0 : isInUse(name, p);
}
