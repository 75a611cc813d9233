import { type Failure, failure, problemTexts } from '../../../shared/core/problem.ts';
import { BENCH_WORDING } from '../../bench/bench.ts';
import './trace.css';
import { movedMass } from '../../../shared/core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import type { FitOptions, FitResult } from '../../../shared/protocol/fit.ts';
import type { Trace } from '../../../shared/protocol/trace.ts';
import { errorText } from '../../clients/errorText.ts';
import { FitClient } from '../../clients/fitClient.ts';
import { WorkerFailure } from '../../clients/workerHost.ts';
import { Dialog } from '../../ui/dialog.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { ProblemList } from '../../ui/problemList.ts';
import { LARGEST_RECORDING, readText } from '../../ui/readableFile.ts';
import { createFitReport } from './fitReport.ts';
import { createMappingForm, type MappingForm } from './mappingForm.ts';
import { implausible } from './plausibility.ts';
import { mapTrace } from './traceFile.ts';
import { readTraceTable, type TraceTable } from './traceTable.ts';

export interface TraceOptions {
  parameters(): Parameters;
  /** Draws the trace over the charts of the running axis. */
  lay(trace: Trace): void;
  /** Puts fitted values on the bench as one step of undo; returns what is wrong, or null. */
  use(changes: ParameterChanges, label: string): string | null;
}

/** A recording that could be read, and which of its columns is what. */
interface Recording {
  readonly table: TraceTable;
  readonly form: MappingForm;
}

const INTRODUCTION =
  'A recording of the real axis as CSV: position and force current or its command, with time or at a rate. It stays on this computer.';

const ACCEPTED = 'A recording is a table in a text file (CSV), at most a million rows long.';

/** A recording of the real axis: which column is what, and what it says of mass, friction, motor, link and delay. */
export class TraceDialog {
  readonly #options: TraceOptions;
  readonly #client = new FitClient();
  readonly #file = element('input', {
    type: 'file',
    accept: '.csv,.txt,.tsv',
    id: 'trace-file',
    onchange: () => void this.#read(),
  });
  readonly #mapping = element('div');
  readonly #known = element(
    'select',
    { id: 'trace-known' },
    element('option', { value: 'force constant' }, 'the force constant: fit the mass'),
    element('option', { value: 'mass' }, 'the mass on the bench: fit the force constant'),
  );
  readonly #fit = button('Fit', () => void this.#run(), { class: 'primary' });
  readonly #cancel = button('Cancel', () => this.#client.cancel());
  readonly #overlay = button('Show over the charts', () => this.#layOver());
  readonly #status = element('p', { role: 'status' });
  readonly #problems = new ProblemList();
  readonly #report = element('div');
  readonly #dialog = new Dialog({
    title: 'Measured trace',
    class: 'wide',
    focus: 'control',
    buttons: [this.#fit, this.#cancel, this.#overlay],
  });
  #text = '';
  #recording: Recording | null = null;

  constructor(options: TraceOptions) {
    this.#options = options;
    this.#fit.disabled = this.#overlay.disabled = this.#cancel.hidden = true;
    this.#dialog.fill(
      element('p', {}, INTRODUCTION),
      element('p', {}, element('label', { for: this.#file.id }, 'Recording '), this.#file),
      this.#mapping,
      element('p', {}, element('label', { for: this.#known.id }, 'Taken as known: '), this.#known),
      this.#dialog.buttons,
      this.#status,
      this.#problems.element,
      this.#report,
    );
  }

  open(): void {
    this.#dialog.open();
  }

  async #read(): Promise<void> {
    const [chosen] = this.#file.files ?? [];
    if (!chosen) return;
    const read = await readText(chosen, LARGEST_RECORDING, ACCEPTED);
    this.#text = 'text' in read ? read.text : '';
    if ('text' in read) this.#readTable();
    else this.#use(failure('', chosen.name, read.problem), null);
  }

  /** `headerLine`: where a person says that the names of the columns are. */
  #readTable(headerLine?: number): void {
    const table = readTraceTable(this.#text, headerLine);
    const again = (line: number) => this.#readTable(line);
    const isTable = 'columns' in table;
    const form = isTable ? createMappingForm(table, this.#options.parameters(), again) : null;
    this.#use(table, form);
  }

  #use(table: TraceTable | Failure, form: MappingForm | null): void {
    this.#recording = form && 'columns' in table ? { table, form } : null;
    this.#mapping.replaceChildren(...(this.#recording ? [this.#recording.form.element] : []));
    this.#fit.disabled = this.#overlay.disabled = this.#recording === null;
    this.#report.replaceChildren();
    setText(this.#status, '');
    this.#problems.show('problems' in table ? problemTexts(table.problems, BENCH_WORDING) : []);
  }

  /** The trace as it is mapped now; null, with the problems shown, when it cannot be. */
  #mapped(): Trace | null {
    if (!this.#recording) return null;
    const { table, form } = this.#recording;
    const trace = mapTrace(table, form.mapping(), form.scales());
    this.#problems.show('problems' in trace ? problemTexts(trace.problems, BENCH_WORDING) : []);
    return 'problems' in trace ? null : trace;
  }

  #layOver(): void {
    const trace = this.#mapped();
    if (!trace) return;
    this.#options.lay(trace);
    setText(
      this.#status,
      'The trace is shown over the charts, from the start of each cycle; “Pinned” removes it.',
    );
  }

  async #run(): Promise<void> {
    const trace = this.#mapped();
    if (!trace) return;
    const parameters = this.#options.parameters();
    this.#showWorking(true);
    setText(this.#fit, 'Fit');
    setText(this.#status, 'Fitting …');
    try {
      const fitted = await this.#client.fit(trace, parameters, this.#fitOptions(parameters));
      if (fitted) this.#show(fitted, this.#doubts(fitted, trace, parameters));
      else setText(this.#status, 'Cancelled. The bench is unchanged.');
    } catch (error) {
      setText(this.#status, errorText(error));
      if (error instanceof WorkerFailure) setText(this.#fit, 'Try again');
    } finally {
      this.#showWorking(false);
    }
  }

  #fitOptions(parameters: Parameters): FitOptions {
    return this.#known.value === 'mass' ? { known: { kind: 'mass', mass: movedMass(parameters) } } : {};
  }

  #showWorking(working: boolean): void {
    this.#fit.disabled = working;
    this.#cancel.hidden = !working;
  }

  /** Why the fit cannot be of the axis on the bench. */
  #doubts(fitted: FitResult, trace: Trace, parameters: Parameters): string[] {
    if (!this.#recording) return [];
    const { table, form } = this.#recording;
    return implausible(fitted, trace, parameters, table, form.mapping());
  }

  #show(result: FitResult, doubts: readonly string[]): void {
    this.#problems.show(doubts);
    setText(
      this.#status,
      doubts.length > 0 ? 'Fitted, but not plausible: the values are not offered.' : 'Fitted to the trace.',
    );
    const apply = button('Put the fitted values on the bench', () => {
      const problem = this.#options.use(result.changes, 'values fitted to a trace');
      setText(this.#status, problem ?? 'The bench has the fitted values; Undo takes them back.');
    });
    apply.disabled = Object.keys(result.changes).length === 0 || doubts.length > 0;
    this.#report.replaceChildren(createFitReport(result), apply);
  }
}
