import './pretune.css';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { PretuneProgress, PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { errorText } from '../../clients/errorText.ts';
import { PretuneClient } from '../../clients/pretuneClient.ts';
import { WorkerFailure } from '../../clients/workerHost.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { createGoalForm } from './goalForm.ts';
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
export function createPretuneDialog({ scene, use }: PretuneOptions): HTMLDialogElement {
  const client = new PretuneClient();
  const goal = createGoalForm();
  const bar = element('progress', { 'aria-label': 'Progress', hidden: true });
  const status = element('p', { class: 'pretune-status', role: 'status' });
  const result = element('div', { class: 'pretune-result' });
  const start = button('Pretune', () => void run(), { class: 'primary' });
  const cancel = button('Cancel', () => client.cancel());
  cancel.hidden = true;
  const dialog = element(
    'dialog',
    { class: 'dialog wide pretune', 'aria-labelledby': 'pretune-title', onclose: () => client.cancel() },
    element('h2', { id: 'pretune-title' }, 'Automatic pretuning'),
    goal.element,
    element(
      'div',
      { class: 'dialog-ways' },
      start,
      cancel,
      button('Close', () => dialog.close()),
    ),
    bar,
    status,
    result,
  );

  function working(is: boolean): void {
    start.disabled = is;
    cancel.hidden = bar.hidden = !is;
  }

  async function run(): Promise<void> {
    working(true);
    setText(start, 'Pretune');
    result.replaceChildren();
    try {
      const found = await client.pretune(scene(), goal.goal(), progress);
      if (found) show(found);
      else setText(status, 'Cancelled. The axis keeps the tuning it has.');
    } catch (error) {
      setText(status, errorText(error));
      if (error instanceof WorkerFailure) setText(start, 'Try again');
    } finally {
      working(false);
    }
  }

  function progress({ stage, done, total }: PretuneProgress): void {
    bar.max = Math.max(total, 1);
    bar.value = done;
    setText(status, `${stage}: ${done} of ${total} runs`);
  }

  function choose(found: PretuneResult, point: TuningPoint): void {
    const problem = use(point.changes, point.label);
    setText(status, problem ?? `Live now: ${pointText(found, point)}.`);
  }

  function show(found: PretuneResult): void {
    setText(status, found.judged);
    const section = (title: string, ...parts: (Node | string)[]) =>
      element('section', {}, element('h3', {}, title), ...parts);
    result.replaceChildren(
      section(
        'The result',
        comparisonTable(found),
        button('Make the pretuned values live', () => choose(found, found.best), { class: 'primary' }),
      ),
      section(
        'The trade-off',
        createTradeOff(found, (point) => choose(found, point)),
      ),
      section('The values and their reasons', choicesTable(found)),
      section('On other machines than the datasheet’s', robustnessTable(found)),
    );
  }

  return dialog;
}
