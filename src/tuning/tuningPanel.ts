import { GUI } from 'lil-gui';
import { PARAMETER_GROUPS, type ParameterName, parameterRow } from '../../shared/core/parameters/table.ts';
import { type Bench, changedNames } from '../bench/bench.ts';
import { isInUse } from '../bench/relevance.ts';
import { button, element, setText } from '../ui/dom.ts';
import { CascadeView } from './cascadeView.ts';
import { ChoiceField } from './choiceField.ts';
import { matches } from './fieldSearch.ts';
import { NumberField } from './numberField.ts';
import type { FieldContext, ParameterField } from './parameterField.ts';
import { StartGainsForm } from './startGainsForm.ts';
import { SwitchField } from './switchField.ts';

export interface TuningPanelOptions {
  readonly propose: FieldContext['propose'];
  /** Sets start gains for a crossover in Hz; returns what is wrong, or null. */
  readonly startGains: (crossover: number) => string | null;
  /** Puts every field back to the scene. */
  readonly resetAll: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly cautions: () => void;
  readonly moveList: () => void;
  readonly pretune: () => void;
}

export interface TuningPanel {
  show(bench: Bench): void;
  /** What undo and redo would do, in words; null: nothing. */
  showSteps(undo: string | null, redo: string | null): void;
  /** The crossover that is offered for start gains, Hz. */
  offerCrossover(crossover: number): void;
  focusSearch(): void;
}

const FIELDS = { number: NumberField, choice: ChoiceField, switch: SwitchField };

interface Group {
  readonly title: string;
  readonly folder: GUI;
  readonly fields: readonly ParameterField[];
}

/** The panel that is made from the parameter table: one folder for each group, one field for each row. */
export function createTuningPanel(host: HTMLElement, bench: Bench, options: TuningPanelOptions): TuningPanel {
  const context = {
    values: { ...bench.parameters },
    origin: bench.origin.parameters,
    propose: options.propose,
  };
  const cascade = new CascadeView();
  const startGains = new StartGainsForm(options.startGains);
  const pretune = button('Pretune …', options.pretune, {
    class: 'panel-wide',
    title: 'Finds the loop, its filters and feedforward for a goal, and proves them in simulation',
  });
  const search = element('input', {
    type: 'search',
    id: 'parameter-search',
    placeholder: 'Find a parameter',
    'aria-label': 'Find a parameter',
    'aria-keyshortcuts': '/',
    oninput: () => arrange(),
    onkeydown: (event) => onSearchKey(event as KeyboardEvent),
  });
  const everything = element('input', { type: 'checkbox', onchange: () => arrange() });
  const changes = element('span');
  const resetAll = button('Reset all', options.resetAll, { title: 'Put every field back to the scene' });
  const undo = button('Undo', options.undo);
  const redo = button('Redo', options.redo);
  const nothing = element('p', { class: 'panel-nothing', role: 'status' });
  // What the field in focus means takes the place of the caution, so that nothing moves while a slider is dragged.
  const label = element('p', { hidden: true });
  const caution = element(
    'p',
    {},
    'A simulation shows tendencies; commissioning belongs to qualified people. ',
    button('Cautions', options.cautions),
  );
  const explain = (event: Event, wanted: boolean) => {
    const field = fields.find(({ domElement }) => domElement.contains(event.target as Node));
    label.hidden = !wanted || !field;
    caution.hidden = !label.hidden;
    setText(label, field?.text ?? '');
  };
  const scroller = element('div', {
    class: 'panel-fields',
    onfocusin: (event) => explain(event, true),
    onfocusout: (event) => explain(event, false),
  });
  host.append(
    element(
      'div',
      { class: 'panel-head' },
      element('h2', {}, 'Tuning'),
      element('div', { class: 'panel-steps' }, undo, redo),
      search,
      element('label', { class: 'panel-everything' }, everything, 'also show what is not in use'),
      element('div', { class: 'panel-changes' }, changes, resetAll),
      nothing,
    ),
    scroller,
    element('div', { class: 'panel-foot' }, label, caution),
  );

  const moveList = button('Move list …', options.moveList, { class: 'panel-move-list' });
  const gui = new GUI({ container: scroller, title: 'Parameters' });
  const groups = PARAMETER_GROUPS.map(({ id, title, rows }): Group => {
    const folder = gui.addFolder(title);
    const names = Object.keys(rows) as ParameterName[];
    const fields = names.map((name) => {
      const field = new FIELDS[parameterRow(name).kind](folder, name, context);
      if (name === 'Kd') folder.$children.append(cascade.element, startGains.element, pretune);
      return field;
    });
    if (id === 'move') folder.$children.append(moveList);
    folder.open(id === 'loop');
    return { title, folder, fields };
  });
  const fields = groups.flatMap((group) => group.fields);
  const isChanged = ({ parameter }: ParameterField) =>
    context.values[parameter] !== context.origin[parameter];
  const isWanted = (field: ParameterField, wanted: string) =>
    wanted
      ? matches(field.parameter, wanted)
      : everything.checked || isChanged(field) || isInUse(field.parameter, context.values);
  /** Which folders were open before a search opened them all; null while nothing is searched for. */
  let openBefore: boolean[] | null = null;

  function show({ parameters, origin }: Bench): void {
    const changed = new Set(changedNames(context.values, parameters));
    const otherOrigin = context.origin !== origin.parameters;
    Object.assign(context.values, parameters);
    context.origin = origin.parameters;
    for (const field of fields) {
      if (changed.has(field.parameter)) field.updateDisplay();
      else if (otherOrigin) field.showOrigin();
    }
    cascade.show(parameters);
    arrange();
  }

  /** Shows what is in use or searched for, and counts what was changed. */
  function arrange(): void {
    const wanted = search.value.trim();
    openForSearch(wanted !== '');
    for (const { title, folder, fields: own } of groups) {
      for (const field of own) field.show(isWanted(field, wanted));
      folder.show(own.some((field) => !field._hidden));
      const changed = own.filter(isChanged).length;
      const label = changed > 0 ? `${title}: ${changed} changed` : title;
      if (folder._title !== label) folder.title(label);
    }
    cascade.element.hidden = startGains.element.hidden = pretune.hidden = wanted !== '';
    moveList.hidden = context.values.program !== 'list' || wanted !== '';
    setText(nothing, fields.every((field) => field._hidden) ? `No parameter is called “${wanted}”.` : '');
    const count = fields.filter(isChanged).length;
    setText(changes, count === 0 ? 'As the scene has it' : `${count} changed from the scene`);
    resetAll.hidden = count === 0;
  }

  function openForSearch(searching: boolean): void {
    if (searching) {
      openBefore ??= groups.map(({ folder }) => !folder._closed);
      for (const { folder } of groups) folder.open();
    } else if (openBefore) {
      for (const [i, { folder }] of groups.entries()) folder.open(openBefore[i]);
      openBefore = null;
    }
  }

  function onSearchKey({ key }: KeyboardEvent): void {
    if (key === 'Escape') {
      search.value = '';
      arrange();
    }
    if (key === 'Enter') fields.find((field) => !field._hidden)?.focus();
  }

  show(bench);
  return {
    show,
    showSteps(undoText, redoText) {
      undo.disabled = undoText === null;
      redo.disabled = redoText === null;
      undo.title = `Undo${undoText ? `: ${undoText}` : ''} (key Ctrl+Z)`;
      redo.title = `Redo${redoText ? `: ${redoText}` : ''} (key Ctrl+Shift+Z)`;
    },
    offerCrossover: (crossover) => {
      startGains.crossover = crossover;
    },
    focusSearch: () => {
      search.focus();
      search.select();
    },
  };
}
