import { PARAMETERS } from '../../../shared/core/parameters/table.ts';
import type { LoopExperiment } from '../../../shared/protocol/analysis.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { Field } from '../../ui/fields/field.ts';
import type { Sweep } from './experiment.ts';
import { createPopover } from './popover.ts';

export interface MeasureFormOptions {
  /** Returns what is wrong, or null when the experiment has begun. */
  onMeasure(kind: LoopExperiment['kind'], sweep: Sweep): string | null;
  onCancel(): void;
  onClear(): void;
}

export interface MeasureForm {
  readonly element: HTMLElement;
  /** Offers a sweep, unless a person has set one. */
  suggest(sweep: Sweep): void;
  /** Share done, 0 to 1; null: nothing is being measured. */
  showProgress(share: number | null): void;
  showMeasured(measured: boolean): void;
}

/** Starts an identification experiment in the simulation, shows how far it is, and stops it. */
export function createMeasureForm({ onMeasure, onCancel, onClear }: MeasureFormOptions): MeasureForm {
  let own = false;
  const hold = () => {
    own = true;
  };
  const field = (name: keyof Sweep, label: string) =>
    new Field<number>(PARAMETERS[name], { id: `measure-${name}`, label, onValue: hold });
  const fields = {
    sweepForce: field('sweepForce', 'Force amplitude'),
    sweepFrom: field('sweepFrom', 'From'),
    sweepTo: field('sweepTo', 'To'),
    sweepTime: field('sweepTime', 'Time'),
  };
  const problem = element('p', { class: 'field-problem', role: 'alert' });
  const start = (kind: LoopExperiment['kind']) => {
    const entries = Object.entries(fields).map(([name, field]) => [name, field.read()] as const);
    if (entries.some(([, value]) => value === undefined)) return;
    const wrong = onMeasure(kind, Object.fromEntries(entries) as Sweep);
    setText(problem, wrong ?? '');
    if (wrong === null) close();
  };
  const clear = button('Clear', onClear, { title: 'Take the measured points off the plots' });
  clear.hidden = true;
  const { element: popover, close } = createPopover(
    'Measure',
    'Measure the loop in the simulation, with friction, counts and noise',
    ...Object.values(fields).map((each) => each.element),
    element(
      'p',
      { class: 'loop-words' },
      'A force is added at the loop output of a copy of the axis, standing at the operating point. Bench and run stay as they are.',
    ),
    element(
      'div',
      { class: 'loop-ways' },
      button('Measure: stepped sine', () => start('stepped sine'), { class: 'primary' }),
      button('Measure: chirp', () => start('chirp')),
      clear,
    ),
    problem,
  );
  const progress = element('progress', { max: 1, 'aria-label': 'Measuring' });
  const share = element('span', { class: 'loop-share' });
  const working = element(
    'div',
    { class: 'loop-measuring', hidden: true },
    'Measuring',
    progress,
    share,
    button('Cancel', onCancel),
  );
  return {
    element: element('div', { class: 'loop-measure' }, popover, working),
    suggest(sweep) {
      if (own || popover.open) return;
      for (const name of Object.keys(fields) as (keyof Sweep)[]) fields[name].show(sweep[name]);
    },
    showProgress(done) {
      working.hidden = done === null;
      popover.hidden = done !== null;
      progress.value = done ?? 0;
      setText(share, `${Math.round(100 * (done ?? 0))} %`);
    },
    showMeasured(measured) {
      clear.hidden = !measured;
    },
  };
}
