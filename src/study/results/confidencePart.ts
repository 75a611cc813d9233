import {
  RANGE_ROW,
  type Ranges,
  UNCERTAIN_NAMES,
  type UncertainName,
  uncertain,
} from '../../../shared/study/ranges.ts';
import { confidenceSentence, rangesText, scopeText } from '../../../shared/verdict/confidence/text.ts';
import type { ConfidenceState, StudyActions } from '../../studyState/state.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { Field } from '../../ui/fields/field.ts';
import { timeLeftText } from '../../ui/timeLeft.ts';

/** With what probability the choice holds: a sentence, how far it is worked out, the ranges of the inputs, and what they act on. */
export class ConfidencePart {
  readonly element: HTMLElement;
  readonly #actions: StudyActions;
  readonly #sentence = element('p', { class: 'verdict-odds', role: 'status' });
  readonly #progress = element('p', { class: 'verdict-note' });
  readonly #scope = element('p', { class: 'verdict-note' });
  readonly #given = element('span');
  readonly #simulate;
  readonly #stop;
  readonly #fields: readonly { readonly name: UncertainName; readonly field: Field<number> }[];
  #ranges: Ranges | null = null;
  /** When the draws began that are under way, ms, and how many there were at first. */
  #begun: { readonly at: number; readonly done: number } | null = null;

  constructor(actions: StudyActions) {
    this.#actions = actions;
    this.#simulate = button('Simulate the moves too', () => actions.simulateDraws(), {
      title:
        'Simulates the moves of the first hundred of these jobs, with every drive that is not ruled out: takes a minute or two',
    });
    this.#stop = button('Stop', () => actions.stopDraws());
    this.#fields = UNCERTAIN_NAMES.map((name) => ({
      name,
      field: new Field<number>(RANGE_ROW, {
        id: `range-${name}`,
        label: `${uncertain(name).label}, ±`,
        onValue: (value) => this.#use(name, value),
      }),
    }));
    this.element = element(
      'section',
      { class: 'verdict-sure' },
      element('h3', {}, 'How sure is the choice?'),
      this.#sentence,
      element('div', { class: 'verdict-draws' }, this.#simulate, this.#stop, this.#progress),
      element(
        'details',
        {},
        element('summary', {}, 'Ranges: ', this.#given),
        element('div', { class: 'verdict-ranges' }, ...this.#fields.map(({ field }) => field.element)),
        this.#scope,
      ),
    );
  }

  show(ranges: Ranges, { found, isRunning, error }: ConfidenceState): void {
    if (ranges !== this.#ranges) {
      this.#ranges = ranges;
      setText(this.#given, rangesText(ranges));
      for (const { name, field } of this.#fields) field.show(ranges[name]);
    }
    setText(this.#sentence, error ?? (found ? confidenceSentence(found) : 'Drawing jobs …'));
    setText(this.#scope, found ? scopeText(found) : '');
    setText(this.#progress, isRunning ? this.#progressText(found) : '');
    if (!isRunning) this.#begun = null;
    const isWhole = found !== null && found.calculated.drawn === found.asked.calculated;
    const isSimulated = found?.simulated != null && found.simulated.drawn === found.asked.simulated;
    this.#simulate.hidden = isRunning || !isWhole || isSimulated;
    this.#stop.hidden = !isRunning;
  }

  #progressText(found: ConfidenceState['found']): string {
    if (!found) return '';
    const { calculated, simulated, asked } = found;
    const isSimulating = calculated.drawn === asked.calculated && asked.simulated > 0;
    const [done, total] = isSimulating
      ? [simulated?.drawn ?? 0, asked.simulated]
      : [calculated.drawn, asked.calculated];
    if (this.#begun === null || done < this.#begun.done) this.#begun = { at: performance.now(), done };
    const left = timeLeftText(
      done - this.#begun.done,
      total - this.#begun.done,
      (performance.now() - this.#begun.at) / 1000,
    );
    const what = isSimulating ? 'jobs simulated' : 'jobs calculated';
    return `${done} of ${total} ${what}, ${left}`;
  }

  #use(name: UncertainName, value: number): void {
    if (this.#ranges && this.#ranges[name] !== value)
      this.#actions.useRanges({ ...this.#ranges, [name]: value });
  }
}
