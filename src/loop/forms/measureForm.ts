import { PARAMETERS } from '../../../shared/core/parameters/table.ts';
import type { LoopExperiment } from '../../../shared/protocol/analysis.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { Field } from '../../ui/fields/field.ts';
import type { Sweep } from './experiment.ts';
import { createPopover, type Popover } from './popover.ts';

interface MeasureFormOptions {
  /** Returns what is wrong, or null when the experiment has begun. */
  onMeasure(kind: LoopExperiment['kind'], sweep: Sweep): string | null;
  onCancel(): void;
  onClear(): void;
}

/** Starts an identification experiment in the simulation, shows how far it is, and stops it. */
export class MeasureForm {
  readonly element: HTMLElement;
  readonly #options: MeasureFormOptions;
  readonly #fields: Readonly<Record<keyof Sweep, Field<number>>>;
  readonly #problem = element('p', { class: 'field-problem', role: 'alert' });
  readonly #clear: HTMLButtonElement;
  readonly #popover: Popover;
  readonly #progress = element('progress', { max: 1, 'aria-label': 'Measuring' });
  readonly #share = element('span', { class: 'loop-share' });
  readonly #working: HTMLElement;
  /** A person has set a sweep. */
  #isOwn = false;

  constructor(options: MeasureFormOptions) {
    this.#options = options;
    this.#fields = {
      sweepForce: this.#field('sweepForce', 'Force amplitude'),
      sweepFrom: this.#field('sweepFrom', 'From'),
      sweepTo: this.#field('sweepTo', 'To'),
      sweepTime: this.#field('sweepTime', 'Time'),
    };
    this.#clear = button('Clear', options.onClear, { title: 'Remove the measured points from the plots' });
    this.#clear.hidden = true;
    this.#popover = createPopover(
      'Measure',
      'Measure the loop in the simulation, with friction, counts and noise',
      ...Object.values(this.#fields).map((field) => field.element),
      element('p', { class: 'loop-words' }, HELP),
      element(
        'div',
        { class: 'loop-ways' },
        button('Measure: stepped sine', () => this.#start('stepped sine'), { class: 'primary' }),
        button('Measure: chirp', () => this.#start('chirp')),
        this.#clear,
      ),
      this.#problem,
    );
    this.#working = element(
      'div',
      { class: 'loop-measuring', hidden: true },
      'Measuring',
      this.#progress,
      this.#share,
      button('Cancel', options.onCancel),
    );
    this.element = element('div', { class: 'loop-measure' }, this.#popover.element, this.#working);
  }

  /** Offers a sweep, unless a person has set one. */
  suggest(sweep: Sweep): void {
    if (this.#isOwn || this.#popover.element.open) return;
    for (const [name, field] of Object.entries(this.#fields)) field.show(sweep[name as keyof Sweep]);
  }

  /** Share done, 0 to 1; null: nothing is being measured. */
  showProgress(share: number | null): void {
    this.#working.hidden = share === null;
    this.#popover.element.hidden = share !== null;
    this.#progress.value = share ?? 0;
    setText(this.#share, `${Math.round(100 * (share ?? 0))} %`);
  }

  showMeasured(measured: boolean): void {
    this.#clear.hidden = !measured;
  }

  #field(name: keyof Sweep, label: string): Field<number> {
    return new Field<number>(PARAMETERS[name], {
      id: `measure-${name}`,
      label,
      onValue: () => {
        this.#isOwn = true;
      },
    });
  }

  #start(kind: LoopExperiment['kind']): void {
    const entries = Object.entries(this.#fields).map(([name, field]) => [name, field.read()] as const);
    if (entries.some(([, value]) => value === undefined)) return;
    const problem = this.#options.onMeasure(kind, Object.fromEntries(entries) as Sweep);
    setText(this.#problem, problem ?? '');
    if (problem === null) this.#popover.close();
  }
}

const HELP =
  'A force is added at the loop output of a copy of the axis, standing at the operating point. Bench and run are not affected.';
