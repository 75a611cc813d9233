import { PRESETS } from '../../../scenes/index.ts';
import { inUnit } from '../../../shared/core/format.ts';
import { PARAMETERS } from '../../../shared/core/parameters/table.ts';
import { maxMotors } from '../../../shared/core/preset.ts';
import { DRIVE_TYPE_LABELS, DRIVE_TYPES } from '../../../shared/core/scene.ts';
import { ratedForce } from '../../../shared/sizing/comparable.ts';
import type { CandidateChoice } from '../../../shared/study/candidate.ts';
import { fittingParts, type PartKind } from '../../../shared/study/parts.ts';
import { candidateLetterMark } from '../../sideBySide/candidateName.ts';
import type { CandidateState } from '../../studyState/state.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { grouped } from '../../ui/picker.ts';
import { CandidateParts } from './candidateParts.ts';
import { PriceField } from './priceField.ts';

type Choice = Omit<CandidateChoice, 'gains'>;

interface CandidateRowOptions {
  /** Returns what is wrong with it, or null. */
  onChoice(choice: Choice): string | null;
  onRemove(): void;
  onDatasheet(row: CandidateRow): void;
}

/** One candidate in a form: its drive, how many motors, its datasheet. */
export class CandidateRow {
  readonly element: HTMLElement;
  readonly letter: string;
  readonly #options: CandidateRowOptions;
  readonly #preset = presetPicker();
  readonly #counts = Array.from({ length: PARAMETERS.motorCount.max }, (_, k) =>
    element('option', { value: k + 1 }, k === 0 ? '1 motor' : `${k + 1} motors`),
  );
  readonly #motors = element('select', {}, ...this.#counts);
  readonly #force = element('span', { class: 'candidate-force' });
  readonly #own = button('Own datasheet …', () => this.#options.onDatasheet(this));
  readonly #parts: CandidateParts;
  readonly #price: PriceField;
  readonly #remove: HTMLButtonElement;
  readonly #problem = element('p', { class: 'field-problem', role: 'alert' });
  #choice: Choice = { preset: '', motorCount: 1, own: {} };

  constructor(letter: string, options: CandidateRowOptions) {
    this.letter = letter;
    this.#options = options;
    this.#preset.setAttribute('aria-label', `Drive of candidate ${letter}`);
    this.#preset.onchange = () => this.#take(this.#otherDrive(this.#preset.value));
    this.#parts = new CandidateParts(letter, (parts) => this.#take({ ...this.#choice, parts }));
    this.#price = new PriceField(letter, (price) => {
      const { price: _, ...others } = this.#choice;
      this.#take(price === undefined ? others : { ...others, price: price as number });
    });
    this.#parts.element.append(this.#price.element);
    this.#motors.setAttribute('aria-label', `Motors in parallel of candidate ${letter}`);
    this.#motors.onchange = () => this.#take({ ...this.#choice, motorCount: Number(this.#motors.value) });
    this.#remove = button('Remove', options.onRemove, { 'aria-label': `Remove candidate ${letter}` });
    this.element = element(
      'li',
      { class: 'candidate-row' },
      candidateLetterMark(letter),
      this.#preset,
      this.#motors,
      this.#force,
      this.#own,
      this.#remove,
      this.#parts.element,
      this.#problem,
    );
  }

  get choice(): Choice {
    return this.#choice;
  }

  /** Asks for another choice; returns what is wrong with it, or null. */
  propose(choice: Choice): string | null {
    return this.#options.onChoice(choice);
  }

  /** Null: there is no such candidate. `mayGo`: others are left without it. */
  show(candidate: CandidateState | null, mayGo: boolean): void {
    this.element.hidden = candidate === null;
    if (!candidate) return;
    const { gains: _gains, ...choice } = candidate.choice;
    this.#choice = choice;
    this.#fill();
    setText(this.#problem, '');
    setText(this.#force, `${inUnit(ratedForce(candidate.choice, PRESETS), 'N')} continuous`);
    const typed = Object.keys(choice.own).length;
    setText(
      this.#own,
      typed === 0 ? 'Own datasheet …' : `${typed} own ${typed === 1 ? 'value' : 'values'} …`,
    );
    this.#remove.disabled = !mayGo;
  }

  /** Another drive on the same guide and scale, as far as they fit it. */
  #otherDrive(preset: string): Choice {
    const lead = leadOf({ preset, own: {} });
    const parts = Object.fromEntries(
      Object.entries(this.#choice.parts ?? {}).filter(([kind, id]) =>
        fittingParts(kind as PartKind, { lead }).includes(id),
      ),
    );
    return { preset, motorCount: 1, own: {}, parts };
  }

  #take(choice: Choice): void {
    const problem = this.propose(choice);
    setText(this.#problem, problem ?? '');
    if (problem !== null) this.#fill();
  }

  #fill(): void {
    const { preset, motorCount } = this.#choice;
    this.#preset.value = preset;
    const chosen = PRESETS[preset];
    const max = chosen ? maxMotors(chosen) : 1;
    for (const [k, option] of this.#counts.entries()) option.disabled = k >= max;
    this.#motors.value = String(motorCount);
    this.#parts.show(leadOf(this.#choice), this.#choice.parts ?? {});
    this.#price.show(this.#choice.price);
  }
}

/** Lead of the screw of a drive, m; 0 where it has none. */
function leadOf({ preset, own }: Pick<Choice, 'preset' | 'own'>): number {
  return own.lead ?? PRESETS[preset]?.parameters.lead ?? 0;
}

/** All drives of the shelf, those of a type together, the weakest first. */
function presetPicker(): HTMLSelectElement {
  const force = (preset: string) => ratedForce({ preset, motorCount: 1, own: {}, gains: null }, PRESETS);
  const choices = DRIVE_TYPES.flatMap((driveType) =>
    Object.entries(PRESETS)
      .filter(([, each]) => each.driveType === driveType)
      .sort(([a], [b]) => force(a) - force(b))
      .map(([value, { title }]) => ({ value, text: title, group: DRIVE_TYPE_LABELS[driveType] })),
  );
  return element('select', {}, ...grouped(choices));
}
