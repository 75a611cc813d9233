import './pretune.css';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { PretuneProgress, PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { errorText } from '../../clients/errorText.ts';
import { PretuneClient } from '../../clients/pretuneClient.ts';
import { WorkerFailure } from '../../clients/workerHost.ts';
import { Dialog } from '../../ui/dialog.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { GoalForm } from './goalForm.ts';
import { pointText } from './pretuneText.ts';
import { choicesTable, comparisonTable, robustnessTable } from './resultTables.ts';
import { createTradeOff } from './tradeOff.ts';

export interface PretuneOptions {
  /** The scene as it is set now. */
  scene(): Scene;
  /** Makes a tuning live as one step of undo; returns what is wrong, or null. */
  use(changes: ParameterChanges, text: string): string | null;
}

/** Automatic pretuning: goal, progress, and a result in which every value has its reason and every point is a run. */
export class PretuneDialog {
  readonly #options: PretuneOptions;
  readonly #client = new PretuneClient();
  readonly #goal = new GoalForm();
  readonly #bar = element('progress', { 'aria-label': 'Progress', hidden: true });
  readonly #status = element('p', { class: 'pretune-status', role: 'status' });
  readonly #result = element('div', { class: 'pretune-result' });
  readonly #start = button('Pretune', () => void this.#run(), { class: 'primary' });
  readonly #cancel = button('Cancel', () => this.#client.cancel());
  readonly #dialog = new Dialog({
    title: 'Automatic pretuning',
    class: 'wide pretune',
    focus: 'control',
    buttons: [this.#start, this.#cancel],
    onClose: () => this.#client.cancel(),
  });

  constructor(options: PretuneOptions) {
    this.#options = options;
    this.#cancel.hidden = true;
    this.#dialog.fill(this.#goal.element, this.#dialog.buttons, this.#bar, this.#status, this.#result);
  }

  open(): void {
    this.#dialog.open();
  }

  async #run(): Promise<void> {
    const goal = this.#goal.goal();
    if (!goal) return;
    this.#showWorking(true);
    setText(this.#start, 'Pretune');
    this.#result.replaceChildren();
    try {
      const found = await this.#client.pretune(this.#options.scene(), goal, (progress) =>
        this.#showProgress(progress),
      );
      if (found) this.#show(found);
      else setText(this.#status, 'Cancelled. The axis keeps the tuning it has.');
    } catch (error) {
      setText(this.#status, errorText(error));
      if (error instanceof WorkerFailure) setText(this.#start, 'Try again');
    } finally {
      this.#showWorking(false);
    }
  }

  #showWorking(working: boolean): void {
    this.#start.disabled = working;
    this.#cancel.hidden = this.#bar.hidden = !working;
  }

  #showProgress({ stage, done, total }: PretuneProgress): void {
    this.#bar.max = Math.max(total, 1);
    this.#bar.value = done;
    setText(this.#status, `${stage}: ${done} of ${total} runs`);
  }

  #choose(found: PretuneResult, point: TuningPoint): void {
    const problem = this.#options.use(point.changes, point.label);
    setText(this.#status, problem ?? `Live now: ${pointText(found, point)}.`);
  }

  #show(found: PretuneResult): void {
    setText(this.#status, found.judged);
    const section = (title: string, ...parts: Node[]) =>
      element('section', {}, element('h3', {}, title), ...parts);
    this.#result.replaceChildren(
      section(
        'The result',
        comparisonTable(found),
        button('Make the pretuned values live', () => this.#choose(found, found.best), { class: 'primary' }),
      ),
      section(
        'The trade-off',
        createTradeOff(found, (point) => this.#choose(found, point)),
      ),
      section('The values and their reasons', choicesTable(found)),
      section('On other machines than the datasheet’s', robustnessTable(found)),
    );
  }
}
