import './trace.css';
import { movedMass } from '../../../shared/axis/motor.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import type { Problem } from '../../../shared/core/problem.ts';
import type { FitResult } from '../../../shared/protocol/fit.ts';
import type { Trace } from '../../../shared/protocol/trace.ts';
import { errorText } from '../../clients/errorText.ts';
import { FitClient } from '../../clients/fitClient.ts';
import { WorkerFailure } from '../../clients/workerHost.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { createFitReport } from './fitReport.ts';
import { createMappingForm, type MappingForm } from './mappingForm.ts';
import { mapTrace } from './traceFile.ts';
import { readTraceTable } from './traceTable.ts';

export interface TraceOptions {
  parameters(): Parameters;
  /** Draws the trace over the charts of the running axis. */
  lay(trace: Trace): void;
  /** Puts fitted values on the bench as one step of undo; returns what is wrong, or null. */
  use(changes: ParameterChanges, label: string): string | null;
}

/** A recording of the real axis: which column is what, and what it says of mass, friction, motor, link and delay. */
export function createTraceDialog({ parameters, lay, use }: TraceOptions): HTMLDialogElement {
  const client = new FitClient();
  let form: MappingForm | null = null;
  let table: ReturnType<typeof readTraceTable> | null = null;
  const file = element('input', {
    type: 'file',
    accept: '.csv,.txt,.tsv',
    id: 'trace-file',
    onchange: () => void read(),
  });
  const place = element('div');
  const known = element(
    'select',
    { id: 'trace-known' },
    element('option', { value: 'force constant' }, 'the force constant: fit the mass'),
    element('option', { value: 'mass' }, 'the mass on the bench: fit the force constant'),
  );
  const fit = button('Fit', () => void run(), { class: 'primary' });
  const overlay = button('Lay over the charts', layOver);
  const cancel = button('Cancel', () => client.cancel());
  fit.disabled = overlay.disabled = cancel.hidden = true;
  const status = element('p', { role: 'status' });
  const problems = element('ul', { class: 'dialog-problems', role: 'alert' });
  const report = element('div');
  const dialog = element(
    'dialog',
    { class: 'dialog wide', 'aria-labelledby': 'trace-title' },
    element('h2', { id: 'trace-title' }, 'Measured trace'),
    element(
      'p',
      {},
      'A recording of the real axis as CSV: position and force current or its command, with time or at a rate. Nothing leaves this computer.',
    ),
    element('p', {}, element('label', { for: 'trace-file' }, 'Recording '), file),
    place,
    element('p', {}, element('label', { for: 'trace-known' }, 'Taken as known: '), known),
    element(
      'div',
      { class: 'dialog-ways' },
      fit,
      cancel,
      overlay,
      button('Close', () => dialog.close()),
    ),
    status,
    problems,
    report,
  );

  async function read(): Promise<void> {
    const [chosen] = file.files ?? [];
    if (!chosen) return;
    table = readTraceTable(await chosen.text());
    form = 'columns' in table ? createMappingForm(table) : null;
    place.replaceChildren(...(form ? [form.element] : []));
    fit.disabled = overlay.disabled = form === null;
    report.replaceChildren();
    setText(status, '');
    complain('problems' in table ? table.problems : []);
  }

  /** The trace as it is mapped now; null, with the problems shown, when it cannot be. */
  function mapped(): Trace | null {
    if (!form || !table || !('columns' in table)) return null;
    const trace = mapTrace(table, form.mapping());
    complain('problems' in trace ? trace.problems : []);
    return 'problems' in trace ? null : trace;
  }

  function layOver(): void {
    const trace = mapped();
    if (!trace) return;
    lay(trace);
    setText(status, 'The trace lies over the charts, from the start of each cycle; “Pinned” takes it away.');
  }

  async function run(): Promise<void> {
    const trace = mapped();
    if (!trace) return;
    fit.disabled = true;
    cancel.hidden = false;
    setText(fit, 'Fit');
    setText(status, 'Fitting …');
    const p = parameters();
    try {
      const options = known.value === 'mass' ? { known: { kind: 'mass', mass: movedMass(p) } as const } : {};
      const fitted = await client.fit(trace, p, options);
      if (fitted) show(fitted);
      else setText(status, 'Cancelled.');
    } catch (error) {
      setText(status, errorText(error));
      if (error instanceof WorkerFailure) setText(fit, 'Try again');
    } finally {
      fit.disabled = false;
      cancel.hidden = true;
    }
  }

  function show(result: FitResult): void {
    setText(status, 'Fitted to the trace.');
    const apply = button('Put the fitted values on the bench', () => {
      setText(
        status,
        use(result.changes, 'values fitted to a trace') ??
          'The bench has the fitted values; Undo takes them back.',
      );
    });
    apply.disabled = Object.keys(result.changes).length === 0;
    report.replaceChildren(createFitReport(result), apply);
  }

  function complain(list: readonly Problem[]): void {
    problems.replaceChildren(...list.map(({ message }) => element('li', {}, message)));
  }

  return dialog;
}
