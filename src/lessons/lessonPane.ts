import { parameterRow } from '../../shared/core/parameters/table.ts';
import type { LessonStep } from '../../shared/lesson/lesson.ts';
import { button, element, setText } from '../ui/dom.ts';
import { parameterLabel, valueText } from '../ui/fields/label.ts';
import { unbroken } from '../ui/unbroken.ts';
import { claimLines, measuredHead, predictionText } from './answerParts.ts';
import type { LessonPlayer, Phase } from './player.ts';

const NEXT: Readonly<Record<Phase, string>> = { asked: 'Run', running: 'To the end', answered: 'Next step' };

type Page = 'figures' | 'reasons';

interface LessonPaneOptions {
  next(): void;
  back(): void;
  choose(answer: number): void;
  leave(): void;
  /** Ends the lesson and opens it for writing. */
  edit(): void;
}

/** The lesson beside the stage: what the class reads, what it is asked, and what was measured. */
export class LessonPane {
  readonly element: HTMLElement;
  readonly #options: LessonPaneOptions;
  readonly #place = element('p', { class: 'lesson-place' });
  readonly #content = element('div', { class: 'lesson-content', 'aria-live': 'polite' });
  /** What a person reads, and scrolls with the arrows. */
  readonly body: HTMLElement;
  readonly #notes = element('div');
  readonly #fold: HTMLDetailsElement;
  readonly #back: HTMLButtonElement;
  readonly #next: HTMLButtonElement;
  #step: LessonStep | null = null;
  /** An answer that does not fit as a whole is read in two pages; null: as a whole. */
  #pages: Readonly<Record<Page, readonly HTMLElement[]>> | null = null;
  #page: Page | null = null;
  /** On the button that leads on from here, once all is read. */
  #nextText = '';

  constructor(options: LessonPaneOptions) {
    this.#options = options;
    this.#fold = element(
      'details',
      { class: 'lesson-notes' },
      element('summary', {}, 'Trainer’s notes'),
      this.#notes,
      button('Edit this lesson', options.edit, { title: 'Ends the lesson and opens it for writing' }),
    );
    this.#back = button('Back', options.back, { keys: 'PageUp' });
    this.#next = button('Run', options.next, { class: 'primary', keys: 'PageDown' });
    this.body = element(
      'div',
      { class: 'lesson-body', tabindex: 0, 'aria-label': 'Text of the step' },
      this.#content,
      this.#fold,
    );
    this.element = element(
      'aside',
      { class: 'lesson', 'aria-label': 'Lesson' },
      element(
        'div',
        { class: 'lesson-head' },
        this.#place,
        button('End lesson', options.leave, { title: 'The bench comes back as it was before the lesson' }),
      ),
      this.body,
      element('div', { class: 'lesson-ways' }, this.#back, this.#next),
    );
  }

  show(player: LessonPlayer): void {
    const { lesson, step, index, phase } = player;
    setText(this.#place, `${index + 1} of ${lesson.steps.length} · ${lesson.title}`);
    // The class must not read the answer in the notes of the step that it is asked about.
    if (step !== this.#step) this.#fold.open = false;
    this.#step = step;
    this.#notes.replaceChildren(...(index === 0 ? lesson.notes : []).concat(step.notes || []).map(paragraph));
    this.#back.disabled = index === 0 && phase === 'asked';
    this.#nextText = player.isAtEnd ? 'End lesson' : NEXT[phase];
    const heading = element('h2', {}, step.title);
    const [first, reasons] =
      phase === 'answered'
        ? [figureParts(player), reasonParts(step)]
        : [[paragraph(step.text), ...fieldLines(step), ...this.#question(player)], []];
    this.#read(heading, ...first, ...reasons);
    const waits = reasons.length > 0 && first.length > 0 && !this.#fits();
    this.#pages = waits ? { figures: [heading, ...first], reasons: [heading, ...reasons] } : null;
    this.#turnTo('figures');
  }

  /** Turns from the figures to the reasons where they have no room below; false where there is nothing to turn to. */
  readOn(): boolean {
    return this.#turnTo('reasons');
  }

  /** Turns back from the reasons to the figures; false where there is nothing to turn back to. */
  readBack(): boolean {
    return this.#turnTo('figures');
  }

  #turnTo(page: Page): boolean {
    const turns = this.#pages !== null && this.#page !== page;
    if (this.#pages) this.#read(...this.#pages[page]);
    this.#page = this.#pages ? page : null;
    setText(this.#next, this.#pages && page === 'figures' ? 'Why?' : this.#nextText);
    return turns;
  }

  #read(...parts: readonly HTMLElement[]): void {
    this.#content.replaceChildren(...parts);
    this.body.scrollTo(0, 0);
  }

  /** Whether all of the content is in sight. */
  #fits(): boolean {
    const { offsetTop, offsetHeight } = this.#content;
    return offsetTop + offsetHeight <= this.body.offsetTop + this.body.clientHeight;
  }

  #question({ step: { question }, chosen, phase }: LessonPlayer): HTMLElement[] {
    if (!question) return [];
    const answers = question.answers.map((answer, index) => {
      const choice = button(answer, () => this.#options.choose(index), { keys: String(index + 1) });
      choice.setAttribute('aria-pressed', String(index === chosen));
      choice.disabled = phase !== 'asked';
      return element('li', {}, choice);
    });
    return [
      element('p', { class: 'lesson-question' }, question.text),
      element('ol', { class: 'lesson-answers' }, ...answers),
    ];
  }
}

/** What was predicted and what was measured. */
function figureParts({ lesson, step, chosen, measured }: LessonPlayer): HTMLElement[] {
  const prediction = predictionText(step, chosen);
  const figures = claimLines(lesson, step, measured).map((line) => element('li', {}, unbroken(line)));
  return [
    ...(prediction ? [element('p', { class: 'lesson-prediction' }, prediction)] : []),
    ...(figures.length > 0
      ? [
          element('h3', {}, unbroken(measuredHead(step))),
          element('ul', { class: 'lesson-figures' }, ...figures),
        ]
      : []),
  ];
}

/** Why it is so, and what the model leaves out. */
function reasonParts({ answer: { text, notShown } }: LessonStep): HTMLElement[] {
  return [
    paragraph(text),
    ...(notShown
      ? [element('p', { class: 'lesson-not-shown' }, element('b', {}, 'Not in the model: '), notShown)]
      : []),
  ];
}

const paragraph = (text: string) => element('p', {}, unbroken(text));

/** The parameters that a step points at, with the values it sets. */
function fieldLines({ pointAt, scene: { parameters } }: LessonStep): HTMLElement[] {
  return pointAt.flatMap((pointer) =>
    'field' in pointer
      ? [
          element(
            'p',
            { class: 'lesson-field', id: `lesson-field-${pointer.field}` },
            `${parameterLabel(pointer.field)}: `,
            element('b', {}, valueText(parameterRow(pointer.field), parameters[pointer.field])),
          ),
        ]
      : [],
  );
}
