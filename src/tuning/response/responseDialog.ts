import { inUnit, ranged } from '../../../shared/core/format.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import { failure, problemTexts } from '../../../shared/core/problem.ts';
import type { MeasuredLoop } from '../../../shared/protocol/analysis.ts';
import {
  RESPONSE_KINDS,
  type ResponseKind,
  type TakenResponse,
  type TriedShape,
} from '../../../shared/protocol/response.ts';
import { BENCH_WORDING } from '../../bench/bench.ts';
import type { AnalysisClient } from '../../clients/analysisClient.ts';
import { errorText } from '../../clients/errorText.ts';
import { Dialog } from '../../ui/dialog.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { figureTable } from '../../ui/figureTable.ts';
import { ProblemList } from '../../ui/problemList.ts';
import { LARGEST_RECORDING, readText } from '../../ui/readableFile.ts';
import { readTraceTable, type TraceTable } from '../trace/traceTable.ts';
import {
  mapResponse,
  RESPONSE_FORMS,
  type ResponseForm,
  type ResponseMapping,
  suggestResponse,
} from './responseFile.ts';

interface ResponseOptions {
  readonly analysis: AnalysisClient;
  parameters(): Parameters;
  /** Draws measured points over the plots of the loop. */
  lay(loop: MeasuredLoop): void;
  /** Puts fitted values on the bench as one step of undo; returns what is wrong, or null. */
  use(changes: ParameterChanges, label: string): string | null;
}

const ACCEPTED = 'A frequency response is a table in a text file (CSV).';

const KIND_TEXT: Readonly<Record<ResponseKind, string>> = {
  'open loop': 'open loop L, with the gains on the bench',
  sensitivity: 'sensitivity S = 1/(1 + L), with the gains on the bench',
  plant: 'plant: position over motor force, m/N',
};

/** A frequency response that was measured on the real axis: laid under the model, and fitted by masses on springs. */
export class ResponseDialog {
  readonly #options: ResponseOptions;
  readonly #file = element('input', {
    type: 'file',
    accept: '.csv,.txt,.tsv',
    id: 'response-file',
    onchange: () => void this.#read(),
  });
  readonly #mapping = element('div');
  readonly #take = button('Show and fit', () => void this.#run(), { class: 'primary' });
  readonly #status = element('p', { role: 'status' });
  readonly #problems = new ProblemList();
  readonly #report = element('div');
  readonly #dialog = new Dialog({
    title: 'Measured frequency response',
    class: 'wide',
    focus: 'control',
    buttons: [this.#take],
  });
  #table: TraceTable | null = null;
  #mapped: () => ResponseMapping = () =>
    suggestResponse({ columns: [], lines: new Uint32Array(), headerLine: null });

  constructor(options: ResponseOptions) {
    this.#options = options;
    this.#take.disabled = true;
    this.#dialog.fill(
      element(
        'p',
        {},
        'A frequency response of the real axis as CSV: frequency in Hz, and size and phase or a complex value.',
      ),
      element('p', {}, element('label', { for: this.#file.id }, 'Response '), this.#file),
      this.#mapping,
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
    const table = 'text' in read ? readTraceTable(read.text) : failure('', chosen.name, read.problem);
    this.#table = 'columns' in table ? table : null;
    this.#mapping.replaceChildren(...(this.#table ? [this.#form(this.#table)] : []));
    this.#take.disabled = this.#table === null;
    this.#report.replaceChildren();
    setText(this.#status, '');
    this.#problems.show('problems' in table ? problemTexts(table.problems, BENCH_WORDING) : []);
  }

  #form(table: TraceTable): HTMLElement {
    const suggested = suggestResponse(table);
    const select = (
      label: string,
      options: readonly (readonly [value: string, text: string])[],
      chosen: string,
    ) =>
      element(
        'select',
        { 'aria-label': label },
        ...options.map(([value, text]) => element('option', { value, selected: value === chosen }, text)),
      );
    const columns = table.columns.map(({ name }, k) => [String(k), name || `column ${k + 1}`] as const);
    const kind = select(
      'Kind of response',
      RESPONSE_KINDS.map((each) => [each, KIND_TEXT[each]]),
      suggested.kind,
    );
    const form = select(
      'Form of the values',
      RESPONSE_FORMS.map((each) => [each, each]),
      suggested.form,
    );
    const frequency = select('Column of the frequency', columns, String(suggested.frequency));
    const first = select('Column of size or real part', columns, String(suggested.first));
    const second = select('Column of phase or imaginary part', columns, String(suggested.second));
    this.#mapped = () => ({
      kind: kind.value as ResponseKind,
      form: form.value as ResponseForm,
      frequency: Number(frequency.value),
      first: Number(first.value),
      second: Number(second.value),
    });
    return figureTable({
      class: 'dialog-table',
      rows: [
        { head: 'What it is', cells: [kind] },
        { head: 'Values', cells: [form] },
        { head: 'Frequency, Hz', cells: [frequency] },
        { head: 'Size or real part', cells: [first] },
        { head: 'Phase or imaginary part', cells: [second] },
      ],
    });
  }

  async #run(): Promise<void> {
    if (!this.#table) return;
    const response = mapResponse(this.#table, this.#mapped());
    this.#problems.show('problems' in response ? problemTexts(response.problems, BENCH_WORDING) : []);
    if ('problems' in response) return;
    setText(this.#status, 'Fitting …');
    try {
      const taken = await this.#options.analysis.takeResponse(this.#options.parameters(), response);
      this.#options.lay(taken.loop);
      this.#show(taken);
    } catch (error) {
      setText(this.#status, errorText(error));
    }
  }

  #show({ loop, fit }: TakenResponse): void {
    const points = `${loop.frequency.length} points are shown over the plots of the loop.`;
    if (typeof fit === 'string') {
      setText(this.#status, `${points} ${fit}`);
      this.#report.replaceChildren();
      return;
    }
    setText(this.#status, points);
    const { mass, link, modes, delay, error, tried } = fit;
    const apply = button('Put the fitted values on the bench', () => {
      const problem = this.#options.use(fit.changes, 'values fitted to a frequency response');
      setText(
        this.#status,
        problem ?? 'The bench has the fitted values; Undo takes them back. Pretune to design on them.',
      );
    });
    this.#report.replaceChildren(
      figureTable({
        class: 'dialog-table',
        columns: ['', 'Fitted'],
        rows: [
          { head: 'Moved mass', cells: [ranged(mass, 'kg', 4)] },
          ...(link
            ? [
                { head: 'Resonance of the link', cells: [ranged(link.resonance, 'Hz', 4)] },
                { head: 'Its damping ratio', cells: [inUnit(link.dampingRatio, '', 2)] },
                { head: 'Stiffness of the link', cells: [ranged(link.stiffness, 'N/µm', 3)] },
              ]
            : [
                {
                  head: 'Resonance of the link',
                  cells: ['none that the points would justify'],
                },
              ]),
          ...modes.flatMap(({ side, mass: part, frequency, dampingRatio }, k) => [
            {
              head: `Flexible part ${k + 1}, ${side === 'table' ? 'on the table' : 'on the motor side'}`,
              cells: [
                `${ranged(part, 'kg', 3)}, ${ranged(frequency, 'Hz', 4)}, damping ratio ${inUnit(dampingRatio, '', 2)}`,
              ],
            },
          ]),
          { head: 'Delay beside the current loop', cells: [ranged(delay, 's', 3)] },
          { head: 'Left between response and fit, RMS', cells: [inUnit(error, '%', 2)] },
        ],
      }),
      element(
        'p',
        {},
        'What each shape of the axis leaves. A further part must lower it well below what there was before.',
      ),
      figureTable({
        class: 'dialog-table',
        columns: ['Shape', 'Left, RMS', 'Bayesian criterion'],
        rows: tried.map((each) => ({
          head: shapeText(each),
          cells: [inUnit(each.error, '%', 2), inUnit(each.criterion, '', 4)],
        })),
      }),
      apply,
    );
  }
}

function shapeText({ link, modes }: TriedShape): string {
  const base = link ? 'Motor and table on a link' : 'One rigid mass';
  if (modes === 0) return base;
  return `${base}, ${modes === 1 ? 'one flexible part' : `${modes} flexible parts`}`;
}
