import { GUI } from 'lil-gui';
import { isInUse } from '../../shared/axis/inUse.ts';
import type { RowValue } from '../../shared/core/parameters/row.ts';
import { PARAMETER_GROUPS, type ParameterName, type Parameters } from '../../shared/core/parameters/table.ts';
import { type Bench, changedNames } from '../bench/bench.ts';
import { button, element, setHidden } from '../ui/dom.ts';
import { CascadeView } from './cascadeView.ts';
import { ChipNote } from './chipNote.ts';
import { type CoggingActions, CoggingNote } from './coggingNote.ts';
import { matches } from './fieldSearch.ts';
import { type LearningActions, LearningNote } from './learningNote.ts';
import { PanelFoot } from './panelFoot.ts';
import { PanelGroup } from './panelGroup.ts';
import { PanelHead } from './panelHead.ts';
import { type FieldContext, ParameterField } from './parameterField.ts';
import { ShapingNote } from './shapingNote.ts';
import { StartGainsForm } from './startGainsForm.ts';
import { WearNote } from './wear/wearNote.ts';

interface TuningPanelOptions extends CoggingActions, LearningActions {
  propose(name: ParameterName, value: RowValue, gesture: string | null): string | null;
  /** Sets start gains for a crossover in Hz; returns what is wrong, or null. */
  startGains(crossover: number): string | null;
  resetAll(): void;
  undo(): void;
  redo(): void;
  cautions(): void;
  moveList(): void;
  pretune(): void;
  /** How far the figures hold for machines that differ from this one. */
  tolerance(): void;
  /** Positioning of the new machine and of the worn one. */
  wearTest(): void;
  /** Sets the input shaper to the least damped oscillation of the loop. */
  shapeForLoop(): void;
}

/** The last gain of the feedback: what acts on all of them follows it. */
const LAST_GAIN: ParameterName = 'resetTime';

/** The panel that is made from the parameter table: one folder for each group, one field for each row. */
export class TuningPanel {
  readonly #head: PanelHead;
  readonly #foot: PanelFoot;
  readonly #values: Parameters;
  #origin: Parameters;
  readonly #groups: readonly PanelGroup[];
  readonly #fields: readonly ParameterField[];
  readonly #cascade = new CascadeView();
  readonly #startGains: StartGainsForm;
  readonly #pretune: HTMLButtonElement;
  readonly #tolerance: HTMLButtonElement;
  readonly #moveList: HTMLButtonElement;
  readonly #shaping: ShapingNote;
  readonly #cogging: CoggingNote;
  readonly #learning: LearningNote;
  readonly #wear: WearNote;
  readonly #chips = new ChipNote();
  /** Which groups were open before a search opened them all; null while nothing is searched for. */
  #openBefore: readonly boolean[] | null = null;

  constructor(host: HTMLElement, bench: Bench, options: TuningPanelOptions) {
    this.#values = { ...bench.parameters };
    this.#origin = bench.origin.parameters;
    this.#head = new PanelHead({
      undo: options.undo,
      redo: options.redo,
      resetAll: options.resetAll,
      onFilter: () => this.#arrange(),
      onFind: () => this.#fields.find(({ element }) => !element.hidden)?.focus(),
    });
    this.#foot = new PanelFoot(options.cautions);
    this.#startGains = new StartGainsForm(options.startGains);
    this.#pretune = button('Pretune …', options.pretune, {
      class: 'panel-wide',
      title: 'Finds the loop, its filters and feedforward for a goal, and tests them in simulation',
    });
    this.#tolerance = button('How sure is this? …', options.tolerance, {
      class: 'panel-wide',
      title:
        'Builds this scene many times over, each machine a little different, and counts those that do the job',
    });
    this.#moveList = button('Move list …', options.moveList, { class: 'panel-wide' });
    this.#shaping = new ShapingNote(options.shapeForLoop);
    this.#cogging = new CoggingNote(options);
    this.#learning = new LearningNote(options);
    this.#wear = new WearNote(options.wearTest);
    const scroller = element('div', {
      class: 'panel-fields',
      onfocusin: ({ target }) => this.#explain(target as Node),
      onfocusout: () => this.#foot.explain(null),
    });
    host.append(this.#head.element, scroller, this.#foot.element);
    this.#groups = this.#createGroups(scroller, options);
    this.#fields = this.#groups.flatMap(({ fields }) => fields);
    this.show(bench);
  }

  show({ parameters, origin }: Bench): void {
    const changed = new Set(changedNames(this.#values, parameters));
    const isOtherOrigin = this.#origin !== origin.parameters;
    Object.assign(this.#values, parameters);
    this.#origin = origin.parameters;
    for (const field of this.#fields) {
      // With another origin, what was typed and refused belongs to a scene that is gone.
      if (changed.has(field.parameter) || isOtherOrigin) field.show();
      if (isOtherOrigin) field.showOrigin();
    }
    this.#cascade.show(parameters);
    this.#shaping.show(parameters);
    this.#learning.show(origin.learnedMove, parameters);
    this.#chips.show(parameters);
    this.#wear.show({ ...origin, parameters });
    this.#cogging.show({ parameters, ...(origin.coggingTable && { coggingTable: origin.coggingTable }) });
    this.#arrange();
  }

  /** After a change of the units in which values are printed. */
  refresh(): void {
    for (const field of this.#fields) field.show();
  }

  /** What undo and redo would do, in words; null: nothing. */
  showSteps(undo: string | null, redo: string | null): void {
    this.#head.showSteps(undo, redo);
  }

  /** The crossover that is offered for start gains, Hz. */
  offerCrossover(crossover: number): void {
    this.#startGains.crossover = crossover;
  }

  /** Crossover of the loop on the bench, Hz; null where it has none. */
  showCrossover(crossover: number | null, isStable: boolean): void {
    this.#startGains.showPresent(crossover, isStable);
  }

  focusSearch(): void {
    this.#head.focusSearch();
  }

  #createGroups(scroller: HTMLElement, { propose }: TuningPanelOptions): PanelGroup[] {
    const context: FieldContext = {
      value: (name) => this.#values[name],
      origin: (name) => this.#origin[name],
      parameters: () => this.#values,
      propose,
    };
    const gui = new GUI({ container: scroller, title: 'Parameters' });
    gui.domElement.classList.add('panel-groups');
    gui.$title.classList.add('panel-groups-title');
    return PARAMETER_GROUPS.map(({ id, title, rows }) => {
      const fields = (Object.keys(rows) as ParameterName[]).map((name) => new ParameterField(name, context));
      const group = new PanelGroup(gui, title, fields, id === 'loop');
      const lastGain = fields.find(({ parameter }) => parameter === LAST_GAIN);
      if (lastGain)
        group.add(
          [this.#cascade.element, this.#startGains.element, this.#pretune, this.#tolerance],
          lastGain,
        );
      if (id === 'move') group.add([this.#moveList]);
      if (id === 'shaping') group.add([this.#shaping.element]);
      if (id === 'compensation') group.add([this.#cogging.element, this.#learning.element]);
      if (id === 'chips') group.add([this.#chips.element]);
      if (id === 'wear') group.add([this.#wear.element]);
      return group;
    });
  }

  #explain(focus: Node): void {
    const field = this.#fields.find(({ element }) => element.contains(focus));
    this.#foot.explain(field?.description ?? null);
  }

  /** Shows what is in use or searched for, and counts what was changed. */
  #arrange(): void {
    const { wanted } = this.#head;
    this.#openForSearch(wanted !== '');
    for (const group of this.#groups) group.arrange((field) => this.#isWanted(field, wanted));
    const notes = [this.#startGains, this.#shaping, this.#cogging, this.#learning, this.#wear, this.#chips];
    for (const part of [this.#pretune, this.#tolerance, ...notes.map(({ element }) => element)])
      setHidden(part, wanted !== '');
    setHidden(this.#cascade.element, wanted !== '' || this.#values.controller !== 'PID');
    setHidden(this.#moveList, wanted !== '' || this.#values.program !== 'list');
    this.#head.showCounts(
      this.#fields.filter((field) => field.isChanged).length,
      this.#fields.every((field) => field.element.hidden),
    );
  }

  #isWanted(field: ParameterField, wanted: string): boolean {
    if (wanted !== '') return matches(field.parameter, wanted);
    return this.#head.showsEverything || field.isChanged || isInUse(field.parameter, this.#values);
  }

  #openForSearch(isSearching: boolean): void {
    if (isSearching) {
      this.#openBefore ??= this.#groups.map(({ isOpen }) => isOpen);
      for (const group of this.#groups) group.open(true);
    } else if (this.#openBefore) {
      for (const [i, group] of this.#groups.entries()) group.open(this.#openBefore[i] ?? false);
      this.#openBefore = null;
    }
  }
}
