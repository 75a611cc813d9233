import './pretune.css';
import { structureName } from '../../../shared/axis/loop/structures.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { loadWarnings } from '../../../shared/figures/loadWarnings.ts';
import { writeCsv } from '../../../shared/files/csv.ts';
import type {
  PretuneGoal,
  PretuneProgress,
  PretuneResult,
  TuningPoint,
} from '../../../shared/protocol/pretune.ts';
import { errorText } from '../../clients/errorText.ts';
import { PretuneClient } from '../../clients/pretuneClient.ts';
import { WorkerFailure } from '../../clients/workerHost.ts';
import type { Drawing } from '../../plot/drawing.ts';
import { drawn } from '../../plot/drawn.ts';
import { Dialog } from '../../ui/dialog.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { fileName, saveText } from '../../ui/files.ts';
import { timeLeftText } from '../../ui/timeLeft.ts';
import { NumberClock, TOLD } from '../../ui/timing/numberClock.ts';
import { errorChart, errorRows } from './errorChart.ts';
import { GoalForm } from './goalForm.ts';
import { pretuneJson, pretuneRows } from './pretuneRows.ts';
import { pointText } from './pretuneText.ts';
import { choicesTable, comparisonTable, robustnessTable } from './resultTables.ts';
import { SoFar } from './soFar.ts';
import { type ComparedStructure, compareStructures } from './structuresCompared.ts';
import { createTradeOff } from './tradeOff.ts';

export interface PretuneOptions {
  /** The scene as it is set now. */
  scene(): Scene;
  /** Makes a tuning live as one step of undo; returns what is wrong, or null. */
  use(goal: PretuneGoal, changes: ParameterChanges, text: string): string | null;
}

/** The share of runs from which their pace tells how long the rest takes. */
const TELLING = 0.1;

/** Automatic pretuning: goal, progress, and a result in which every value has its reason and every point is a run. */
export class PretuneDialog {
  readonly #options: PretuneOptions;
  readonly #client = new PretuneClient();
  readonly #goal = new GoalForm();
  #pacing = new NumberClock(TOLD);
  readonly #bar = element('progress', { 'aria-label': 'Progress', hidden: true });
  readonly #structure = element('p', { class: 'pretune-structure' });
  readonly #status = element('p', { class: 'pretune-status', role: 'status' });
  readonly #soFar = new SoFar(({ goal, changes, label }) => this.#options.use(goal, changes, label));
  readonly #result = element('div', { class: 'pretune-result' });
  readonly #start = button('Pretune', () => void this.#run((goal) => this.#pretune(goal)), {
    class: 'primary',
  });
  readonly #compare = button('Compare structures', () => void this.#run((goal) => this.#compareAll(goal)), {
    title: 'Pretunes PID, cascade, cascade with observer and, where possible, a dual loop for the same goal',
  });
  readonly #cancel = button('Cancel', () => this.#client.cancel());
  /** When the search was started, ms. */
  #begun = 0;
  readonly #dialog = new Dialog({
    title: 'Automatic pretuning',
    class: 'wide pretune',
    focus: 'control',
    buttons: [this.#start, this.#compare, this.#cancel],
    onClose: () => this.#client.cancel(),
  });

  constructor(options: PretuneOptions) {
    this.#options = options;
    this.#cancel.hidden = true;
    this.#dialog.fill(
      this.#goal.element,
      this.#structure,
      this.#dialog.buttons,
      this.#bar,
      this.#status,
      this.#soFar.element,
      this.#result,
    );
  }

  open(): void {
    const { parameters } = this.#options.scene();
    this.#goal.offerWindow(parameters.window);
    setText(this.#structure, `Structure of the loop, as set in the panel: ${structureName(parameters)}.`);
    this.#dialog.open();
  }

  async #run(work: (goal: PretuneGoal) => Promise<boolean>): Promise<void> {
    const goal = this.#goal.goal();
    if (!goal) return;
    this.#showWorking(true);
    this.#soFar.hide();
    this.#begun = performance.now();
    this.#pacing = new NumberClock(TOLD);
    setText(this.#status, 'Starting …');
    setText(this.#start, 'Pretune');
    this.#result.replaceChildren();
    try {
      if (await work(goal)) this.#soFar.hide();
      else
        setText(
          this.#status,
          this.#soFar.stop()
            ? 'Cancelled. The best tuning so far can still be made live.'
            : 'Cancelled. The axis keeps the tuning it has.',
        );
    } catch (error) {
      this.#soFar.hide();
      setText(this.#status, errorText(error));
      if (error instanceof WorkerFailure) setText(this.#start, 'Try again');
    } finally {
      this.#showWorking(false);
    }
  }

  async #pretune(goal: PretuneGoal): Promise<boolean> {
    const scene = this.#options.scene();
    const found = await this.#client.pretune(scene, goal, (progress) => {
      this.#showProgress('', progress);
      this.#soFar.show(goal, progress);
    });
    if (found) this.#show(found, scene);
    return found !== null;
  }

  async #compareAll(goal: PretuneGoal): Promise<boolean> {
    const scene = this.#options.scene();
    const compared = await compareStructures(this.#client, scene, goal, (structure, progress) =>
      this.#showProgress(`${structure}, `, progress),
    );
    if (compared) this.#showCompared(compared, scene);
    return compared !== null;
  }

  #showWorking(working: boolean): void {
    this.#start.disabled = this.#compare.disabled = working;
    this.#cancel.hidden = this.#bar.hidden = !working;
  }

  #showProgress(prefix: string, { stage, done, total }: PretuneProgress): void {
    if (!this.#pacing.isDue()) return;
    this.#bar.max = Math.max(total, 1);
    this.#bar.value = done;
    // The first runs search for the shape of loops and take longer than most.
    const telling = done < TELLING * total ? 0 : done;
    const left = timeLeftText(telling, total, (performance.now() - this.#begun) / 1000);
    setText(this.#status, `${prefix}${stage}: ${done} of ${total} runs, ${left}`);
  }

  #choose(found: PretuneResult, point: TuningPoint): void {
    const problem = this.#options.use(found.goal, point.changes, point.label);
    const other =
      point === found.best
        ? ''
        : ' The reasons and the other machines below belong to the recommended tuning, not to this one.';
    setText(this.#status, problem ?? `Live now: ${pointText(found, point)}.${other}`);
  }

  #show(found: PretuneResult, { parameters, title }: Scene): void {
    setText(this.#status, found.judged);
    const { best, textbook } = found.courses;
    const courses = [
      ...(textbook ? [{ name: 'textbook', course: textbook }] : []),
      { name: 'pretuned', course: best },
    ];
    this.#result.replaceChildren(
      section(
        'The result',
        ...warningBlock(loadWarnings(parameters, found.best)),
        comparisonTable(found, parameters, [
          ['textbook', found.textbook],
          ['pretuned', found.best],
        ]),
        element(
          'div',
          { class: 'pretune-actions' },
          button('Make the pretuned values live', () => this.#choose(found, found.best), {
            class: 'primary',
          }),
          button('Save table (CSV)', () =>
            saveText(fileName(`${title} pretuning`, 'csv'), writeCsv(pretuneRows(found)), 'text/csv'),
          ),
          button('Save table (JSON)', () =>
            saveText(fileName(`${title} pretuning`, 'json'), pretuneJson(found)),
          ),
        ),
        chart([errorChart(courses)], found),
      ),
      section(
        'The trade-off',
        createTradeOff(found, (point) => this.#choose(found, point)),
      ),
      section('The recommended values and their reasons', choicesTable(found)),
      section('The recommended tuning on machines that differ from the datasheet', robustnessTable(found)),
    );
  }

  #showCompared(compared: readonly ComparedStructure[], { parameters }: Scene): void {
    const results = compared.flatMap(({ structure, found, changes }) =>
      typeof found === 'string' ? [] : [{ name: structure.name, found, changes }],
    );
    const [first] = results;
    const failed = compared.flatMap(({ structure, found }) =>
      typeof found === 'string' ? [`${structure.name}: ${found}`] : [],
    );
    setText(this.#status, first?.found.judged ?? '');
    if (!first) {
      this.#result.replaceChildren(...warningBlock(failed));
      return;
    }
    const live = (index: number): Node => {
      const result = results[index];
      if (!result) return element('span', {});
      const { name, found, changes } = result;
      return button('Make live', () => {
        const problem = this.#options.use(found.goal, changes, name);
        setText(this.#status, problem ?? `Live now: ${name}, ${pointText(found, found.best)}.`);
      });
    };
    const warnings = results.flatMap(({ name, found }) =>
      loadWarnings(parameters, found.best).map((warning) => `${name}: ${warning}`),
    );
    this.#result.replaceChildren(
      section(
        'Structures of the loop, each pretuned for the same goal',
        ...warningBlock([...failed, ...warnings]),
        chart(
          errorRows(results.map(({ name, found }) => ({ name, course: found.courses.best }))),
          first.found,
        ),
        comparisonTable(
          first.found,
          parameters,
          results.map(({ name, found }) => [name, found.best]),
          live,
        ),
      ),
    );
  }
}

function section(title: string, ...parts: Node[]): HTMLElement {
  return element('section', {}, element('h3', {}, title), ...parts);
}

/** The following error of one move with each tuning. */
function chart(drawings: readonly Drawing[], { figure }: PretuneResult): HTMLElement {
  return element(
    'figure',
    { class: 'trade' },
    drawn(...drawings),
    element('figcaption', {}, `Following error in the run that was judged by its ${figure}`),
  );
}

/** What speaks against a tuning, before it is made live. */
function warningBlock(warnings: readonly string[]): Node[] {
  return warnings.map((text) => element('p', { class: 'pretune-warnings', role: 'alert' }, text));
}
