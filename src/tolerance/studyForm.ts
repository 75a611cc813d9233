import { isInUse } from '../../shared/axis/inUse.ts';
import { type Problem, problemText } from '../../shared/core/problem.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { onPage, type Wording } from '../../shared/core/sentence.ts';
import { checkTolerance, LIMIT_ROWS, RUNS_ROW, SEED_ROW } from '../../shared/tolerance/checkTolerance.ts';
import { type Limits, RUN_FIGURE_NAMES, RUN_FIGURES } from '../../shared/tolerance/runFigures.ts';
import { type NumberName, SPREADABLE, type Spread } from '../../shared/tolerance/spread.ts';
import {
  MAX_SPREADS,
  SAMPLINGS,
  type Spreads,
  type ToleranceStudy,
} from '../../shared/tolerance/toleranceStudy.ts';
import { button, element, setText } from '../ui/dom.ts';
import { Field } from '../ui/fields/field.ts';
import { labelled } from '../ui/picker.ts';
import { offeredSpread, offeredSpreads } from './offeredStudy.ts';
import { SpreadLine } from './spreadLine.ts';

/** Fields of the page are in the units of the table. */
const WORDING: Wording = onPage('metric');

/** What differs from machine to machine, what a good one keeps, and how many are built. */
export class StudyForm {
  readonly element: HTMLElement;
  readonly #scene: () => Scene;
  readonly #list = element('ul', { class: 'spread-lines' });
  readonly #problem = element('p', { class: 'field-problem', role: 'alert' });
  readonly #add = button('Add a parameter', () => this.#addLine());
  readonly #limits = RUN_FIGURE_NAMES.map((name) => ({
    name,
    field: new Field<number | null>(LIMIT_ROWS[name], {
      id: `limit-${name}`,
      label: RUN_FIGURES[name].label,
      empty: 'any',
      onValue: () => this.#showOrigin(),
    }),
  }));
  readonly #runs = new Field<number>(RUNS_ROW, { id: 'tolerance-runs', label: 'Machines' });
  readonly #seed = new Field<number>(SEED_ROW, { id: 'tolerance-seed', label: 'Seed' });
  readonly #sampling = element(
    'select',
    {},
    ...SAMPLINGS.map((value) => element('option', { value }, value)),
  );
  /** Where the limits come from, as long as they are those that were offered. */
  readonly #origin = element('p', { class: 'tolerance-offer', role: 'status' });
  #originText = '';
  #lines: SpreadLine[] = [];
  /** As they were offered; null: those that stand there are a person's or a file's. */
  #offered: Limits | null = null;
  /** What was offered or shown last: another scene on the bench is offered its own. */
  #shown: Pick<Scene, 'id' | 'title' | 'preset'> | null = null;

  constructor(scene: () => Scene) {
    this.#scene = scene;
    this.#runs.show(RUNS_ROW.default);
    this.#seed.show(SEED_ROW.default);
    this.element = element(
      'div',
      { class: 'tolerance-form' },
      element('h3', {}, 'What differs from machine to machine'),
      this.#list,
      this.#add,
      element('h3', {}, 'A machine is good if it does not trip and keeps'),
      element('div', { class: 'tolerance-fields' }, ...this.#limits.map(({ field }) => field.element)),
      this.#origin,
      element('h3', {}, 'How many are built'),
      element(
        'div',
        { class: 'tolerance-fields' },
        this.#runs.element,
        labelled('Sampling', this.#sampling),
        this.#seed.element,
      ),
      this.#problem,
    );
  }

  /** Offers what suits the scene, unless it is the one that the form is about. */
  offer(): void {
    const scene = this.#scene();
    const isSame =
      this.#shown?.id === scene.id &&
      this.#shown.title === scene.title &&
      this.#shown.preset === scene.preset;
    if (isSame) return;
    this.#fill(scene, offeredSpreads(scene.parameters), {});
    this.#offered = {};
  }

  /** Whether limits may be offered: nobody has entered any. */
  get takesLimits(): boolean {
    return (
      this.#offered !== null &&
      this.#limits.every(({ name, field }) => field.read() === (this.#offered?.[name] ?? null))
    );
  }

  /** Shows limits and where they come from; those that were entered meanwhile stay. */
  offerLimits(limits: Limits, text: string): void {
    if (this.takesLimits) {
      this.#offered = limits;
      this.#originText = text;
      this.#showLimits(limits);
    }
    this.#showOrigin();
  }

  /** Shows a study that was opened. */
  show({ scene, spreads, limits, sampling, seed, runs }: ToleranceStudy): void {
    this.#fill(scene, Object.entries(spreads) as [NumberName, Spread][], limits);
    this.#offered = null;
    this.#sampling.value = sampling;
    this.#seed.show(seed);
    this.#runs.show(runs);
  }

  /** The study as it is entered; null while something of it is not legal, which is said where it stands. */
  study(): ToleranceStudy | null {
    setText(this.#problem, '');
    const spreads: [NumberName, Spread][] = [];
    for (const line of this.#lines) {
      const spread = line.read();
      if (!spread) return null;
      if (spreads.some(([name]) => name === line.name)) {
        line.showProblem('This parameter is already listed above. Remove one of the two.');
        return null;
      }
      spreads.push([line.name, spread]);
    }
    const limits = this.#limits.map(({ name, field }) => [name, field.read()] as const);
    const [runs, seed] = [this.#runs.read(), this.#seed.read()];
    if (runs === undefined || seed === undefined || limits.some(([, limit]) => limit === undefined))
      return null;
    const checked = checkTolerance(this.#scene(), {
      spreads: Object.fromEntries(spreads) as Spreads,
      limits: Object.fromEntries(limits.filter(([, limit]) => limit !== null)),
      sampling: this.#sampling.value,
      seed,
      runs,
    });
    if ('study' in checked) return checked.study;
    this.#refuse(checked.problems);
    return null;
  }

  #refuse(problems: readonly Problem[]): void {
    const others = problems.filter((problem) => {
      const [, name] = problem.field.split('.');
      const line = problem.field.startsWith('spreads.') && this.#lines.find((each) => each.name === name);
      if (line) line.showProblem(problemText({ ...problem, about: problem.about.slice(1) }, WORDING));
      return !line;
    });
    setText(this.#problem, others.map((problem) => problemText(problem, WORDING)).join(' '));
  }

  #fill(scene: Scene, spreads: readonly (readonly [NumberName, Spread])[], limits: Limits): void {
    const { id, title, preset } = scene;
    this.#shown = { id, title, preset };
    setText(this.#problem, '');
    this.#lines = spreads.map((each) => this.#newLine(each));
    this.#originText = '';
    this.#showLimits(limits);
    this.#showOrigin();
    this.#showLines();
  }

  #showOrigin(): void {
    setText(this.#origin, this.takesLimits ? this.#originText : '');
  }

  #showLimits(limits: Limits): void {
    for (const { name, field } of this.#limits) field.show(limits[name] ?? null);
  }

  #newLine(spread: readonly [NumberName, Spread]): SpreadLine {
    return new SpreadLine(
      spread,
      () => this.#scene().parameters,
      (line) => {
        this.#lines = this.#lines.filter((each) => each !== line);
        this.#showLines();
        this.#add.focus();
      },
    );
  }

  /** One that spreads not yet. */
  #addLine(): void {
    const { parameters } = this.#scene();
    const taken = new Set(this.#lines.map(({ name }) => name));
    const free = (name: NumberName) => !taken.has(name) && isInUse(name, parameters);
    const name =
      offeredSpreads(parameters).find(([each]) => free(each))?.[0] ??
      SPREADABLE.find((each) => free(each) && parameters[each] !== 0);
    if (name === undefined) return;
    this.#lines.push(this.#newLine([name, offeredSpread(name, parameters[name], 'per cent')]));
    this.#showLines();
  }

  #showLines(): void {
    this.#list.replaceChildren(...this.#lines.map((line) => line.element));
    this.#add.disabled = this.#lines.length >= MAX_SPREADS;
  }
}
