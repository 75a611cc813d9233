import { fixed, inUnit, shortest } from '../../shared/core/format.ts';
import { parameterLabel, parameterText } from '../../shared/core/parameters/labels.ts';
import {
  RUN_FIGURE_NAMES,
  RUN_FIGURES,
  type RunFigureName,
  type RunResult,
  runFigureText,
} from '../../shared/tolerance/runFigures.ts';
import type { NumberName } from '../../shared/tolerance/spread.ts';
import type { Sensitivity, ToleranceSummary } from '../../shared/tolerance/summary.ts';
import {
  type Machine,
  machinesOf,
  spreadNames,
  type ToleranceStudy,
} from '../../shared/tolerance/toleranceStudy.ts';
import { drawn } from '../plot/drawn.ts';
import { button, element, setText } from '../ui/dom.ts';
import { figureTable } from '../ui/figureTable.ts';
import { labelled } from '../ui/picker.ts';
import { histogramChart } from './histogram.ts';
import { chosenMachines, type ScatteredMachine, scatterChart } from './scatter.ts';

/** What a study has found so far: its yield, the figures, what they depend on, and the machines themselves. */
export class ResultView {
  readonly element = element('div', { class: 'tolerance-result' });
  readonly #openMachine: (run: number) => void;
  readonly #yield = element('p', { class: 'tolerance-yield' });
  readonly #notes = element('ul', { class: 'tolerance-notes' });
  readonly #worst = element('div', {});
  readonly #figures = element('div', { class: 'tolerance-scroll' });
  readonly #of = element('select', { onchange: () => this.#draw() });
  readonly #over = element('select', {
    onchange: () => {
      this.#isOverChosen = true;
      this.#draw();
    },
  });
  readonly #depends = element('div', {});
  readonly #histogram = element('figure', { class: 'tolerance-chart' });
  readonly #scatter = element('figure', { class: 'tolerance-chart' });
  #study: ToleranceStudy | null = null;
  #summary: ToleranceSummary | null = null;
  #machines: ScatteredMachine[] = [];
  #machine: ((run: number) => Machine) | null = null;
  /** Until a person has chosen, the strongest influence lies across. */
  #isOverChosen = false;

  constructor(openMachine: (run: number) => void) {
    this.#openMachine = openMachine;
    this.#of.append(
      ...RUN_FIGURE_NAMES.map((name) => element('option', { value: name }, RUN_FIGURES[name].label)),
    );
    this.element.hidden = true;
    this.element.append(
      this.#yield,
      this.#notes,
      this.#worst,
      this.#figures,
      element('div', { class: 'tolerance-choice' }, labelled('Figure', this.#of)),
      this.#histogram,
      this.#depends,
      element('div', { class: 'tolerance-choice' }, labelled('Over', this.#over)),
      this.#scatter,
    );
  }

  get results(): readonly RunResult[] {
    return this.#machines.map(({ result }) => result);
  }

  begin(study: ToleranceStudy): void {
    this.#machine = machinesOf(study);
    this.#study = study;
    this.#summary = null;
    this.#machines = [];
    this.#isOverChosen = false;
    this.#over.replaceChildren(
      ...spreadNames(study).map((name) => element('option', { value: name }, parameterLabel(name))),
    );
    this.element.hidden = true;
  }

  show(summary: ToleranceSummary, fresh: readonly RunResult[]): void {
    const machine = this.#machine;
    if (!machine) return;
    this.#summary = summary;
    this.#machines.push(...fresh.map((result) => ({ result, values: machine(result.run).values })));
    this.element.hidden = false;
    this.#showYield(summary);
    this.#figures.replaceChildren(this.#figureTable(summary));
    this.#draw();
  }

  #showYield({ good, runs, trips, unsettled, untrusted, worst }: ToleranceSummary): void {
    const per = (share: number) => shortest(share, '%', 4);
    setText(
      this.#yield,
      `${per(good.share)} of the machines are good: ${Math.round(good.share * runs)} of ${runs}. ` +
        `95 % confidence interval ${per(good.low)} to ${per(good.high)} (Wilson).`,
    );
    const notes = [
      ...trips.map(({ kind, count }) => `Tripped by ${kind}: ${count}`),
      ...(unsettled > 0 ? [`Not settled: ${unsettled}`] : []),
      ...(untrusted > 0 ? [`Energy account does not balance, figures not to be trusted: ${untrusted}`] : []),
    ];
    this.#notes.replaceChildren(...notes.map((text) => element('li', {}, text)));
    this.#worst.replaceChildren(
      button(`Worst machine on the bench (number ${worst})`, () => this.#openMachine(worst), {
        title: `${this.#machineText(worst)}. Undo brings the bench back.`,
      }),
    );
  }

  /** 'Payload 4.31 kg, …' */
  #machineText(run: number): string {
    const names = this.#study ? spreadNames(this.#study) : [];
    const values = this.#machine?.(run).values ?? [];
    return names
      .map((name, k) => {
        const value = values[k];
        return value === undefined
          ? ''
          : `${parameterLabel(name)} ${parameterText(name, Number(value.toPrecision(4)))}`;
      })
      .join(', ');
  }

  #figureTable({ figures }: ToleranceSummary): HTMLTableElement {
    const limits = this.#study?.limits ?? {};
    return figureTable({
      class: 'dialog-table tolerance-figures',
      columns: ['', 'Smallest', '5 %', 'Median', '95 %', 'Largest', 'Limit', 'Largest on the bench'],
      rows: figures.map(({ name, min, low, median, high, max, worst }) => {
        const limit = limits[name];
        return {
          head: RUN_FIGURES[name].label,
          title: RUN_FIGURES[name].definition,
          cells: [
            ...[min, low, median, high, max].map((value) => runFigureText(name, value)),
            limit === undefined ? 'any' : runFigureText(name, limit),
            button(`Machine ${worst}`, () => this.#openMachine(worst), {
              'aria-label': `Machine ${worst}, with the largest ${RUN_FIGURES[name].label}, on the bench`,
            }),
          ].map((cell) => (typeof cell === 'string' ? cell : element('td', {}, cell))),
        };
      }),
    });
  }

  #draw(): void {
    const [study, summary] = [this.#study, this.#summary];
    if (!study || !summary) return;
    const of = this.#of.value as RunFigureName;
    const values = this.#machines.flatMap(({ result }) => result.figures[of] ?? []);
    const missing = this.#machines.length - values.length;
    this.#histogram.replaceChildren(
      ...(values.length > 0 ? [drawn(histogramChart(of, values, study.limits[of]))] : []),
      element(
        'figcaption',
        {},
        `${RUN_FIGURES[of].label}: number of machines by value.`,
        ...(missing > 0 ? [` ${missing} have none: they tripped, or did not settle.`] : []),
      ),
    );
    const sensitivity = summary.sensitivities.find((each) => each.of === of);
    const isGood = summary.sensitivities.find((each) => each.of === 'good');
    this.#depends.replaceChildren(influenceTable(sensitivity, isGood));
    const strongest = sensitivity?.influences[0]?.name;
    if (!this.#isOverChosen && strongest) this.#over.value = strongest;
    this.#drawScatter(study, of, this.#over.value as NumberName, summary.worst);
  }

  #drawScatter(study: ToleranceStudy, of: RunFigureName, over: NumberName, worst: number): void {
    const all = chosenMachines(this.#machines, study.limits, worst);
    const index = spreadNames(study).indexOf(over);
    this.#scatter.replaceChildren(
      drawn(scatterChart(over, index, of, all, study.limits, worst)),
      element(
        'figcaption',
        {},
        'Dots are good machines, crosses are not; the ring is the one farthest from good.',
        ...(all.length < this.#machines.length
          ? [` ${all.length} of ${this.#machines.length} are drawn.`]
          : []),
      ),
    );
  }
}

/** What the figure depends on, the strongest first, with the share of each as a bar. */
function influenceTable(of: Sensitivity | undefined, good: Sensitivity | undefined): HTMLElement {
  if (!of) return element('p', {}, 'What it depends on is shown once more machines have run.');
  const share = (sensitivity: Sensitivity | undefined, name: NumberName): Node => {
    const found = sensitivity?.influences.find((each) => each.name === name);
    if (!sensitivity || !found || found.share <= sensitivity.noise)
      return element('td', { class: 'meaning' }, 'too small to tell');
    const bar = element('span', { class: 'influence-bar', 'aria-hidden': 'true' });
    bar.style.setProperty('--share', `${(100 * found.share).toFixed(1)}%`);
    return element('td', {}, inUnit(found.share, '%', 3), bar);
  };
  const left = 1 - of.influences.reduce((sum, each) => sum + (each.share > of.noise ? each.share : 0), 0);
  return element(
    'div',
    {},
    figureTable({
      class: 'dialog-table',
      columns: [
        'Depends on',
        'Share of its variance (Sobol, first order)',
        'Rank slope',
        'Share in being good',
      ],
      rows: of.influences.map(({ name, slope }) => ({
        head: parameterLabel(name),
        cells: [share(of, name), fixed(slope, '', 2), share(good, name)],
      })),
    }),
    element(
      'p',
      { class: 'meaning' },
      `${inUnit(Math.max(left, 0), '%', 2)} of the variance comes from parameters acting together, from weak ones and from noise. ` +
        `Rank slope: standardised rank regression, R² ${of.explained.toFixed(2)}; 1 rises with the parameter, −1 falls. ` +
        `With this many machines, shares below ${inUnit(of.noise, '%', 2)} cannot be told from chance.`,
    ),
  );
}
