import { parameterRow } from '../../shared/core/parameters/table.ts';
import type { LessonStep } from '../../shared/lesson/lesson.ts';
import { button, element, setText } from '../ui/dom.ts';
import { parameterLabel, valueText } from '../ui/fields/label.ts';
import { claimLines, predictionText } from './answerParts.ts';
import type { LessonPlayer, Phase } from './player.ts';

const NEXT: Readonly<Record<Phase, string>> = { asked: 'Run', running: 'To the end', answered: 'Next step' };

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
  readonly #notes = element('div');
  readonly #fold: HTMLDetailsElement;
  readonly #back: HTMLButtonElement;
  readonly #next: HTMLButtonElement;
  #step: LessonStep | null = null;

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
    this.element = element(
      'aside',
      { class: 'lesson', 'aria-label': 'Lesson' },
      element(
        'div',
        { class: 'lesson-head' },
        this.#place,
        button('End lesson', options.leave, { title: 'The bench comes back as it was before the lesson' }),
      ),
      element(
        'div',
        { class: 'lesson-body', tabindex: 0, 'aria-label': 'Text of the step' },
        this.#content,
        this.#fold,
      ),
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
    this.#content.replaceChildren(...this.#parts(player));
    this.#content.parentElement?.scrollTo(0, 0);
    this.#back.disabled = index === 0 && phase === 'asked';
    setText(this.#next, player.isAtEnd ? 'End lesson' : NEXT[phase]);
  }

  #parts(player: LessonPlayer): HTMLElement[] {
    const { lesson, step, phase } = player;
    const heading = element('h2', {}, step.title);
    if (phase !== 'answered')
      return [heading, paragraph(step.text), ...fieldLines(step), ...this.#question(player)];
    const prediction = predictionText(step, player.chosen);
    const figures = claimLines(lesson, step, player.measured).map((line) => element('li', {}, line));
    const { text, notShown } = step.answer;
    return [
      heading,
      ...(prediction ? [element('p', { class: 'lesson-prediction' }, prediction)] : []),
      ...(figures.length > 0
        ? [element('h3', {}, 'Measured just now'), element('ul', { class: 'lesson-figures' }, ...figures)]
        : []),
      paragraph(text),
      ...(notShown
        ? [element('p', { class: 'lesson-not-shown' }, element('b', {}, 'Not in the model: '), notShown)]
        : []),
    ];
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

const paragraph = (text: string) => element('p', {}, text);

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
