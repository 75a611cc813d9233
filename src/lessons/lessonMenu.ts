import { LESSONS } from '../../scenes/lessons/index.ts';
import type { Lesson } from '../../shared/lesson/lesson.ts';
import { Dialog } from '../ui/dialog.ts';
import { button, element } from '../ui/dom.ts';

interface LessonMenuOptions {
  /** The step at which a lesson was left, from 0. */
  leftAt(id: string): number;
  open(lesson: Lesson, id: string, step: number): void;
  openFile(): void;
  record(): void;
}

/** The lessons there are, each with its aim, from the start or from where it was left. */
export class LessonMenu {
  readonly #dialog: Dialog;
  readonly #list = element('ul', { class: 'lesson-list' });
  readonly #options: LessonMenuOptions;

  constructor(options: LessonMenuOptions) {
    this.#options = options;
    const openFile = () => {
      this.#dialog.close();
      options.openFile();
    };
    this.#dialog = new Dialog({
      title: 'Lessons',
      class: 'wide',
      buttons: [
        button('Open a lesson from a file …', openFile),
        button('Record a lesson …', () => {
          this.#dialog.close();
          options.record();
        }),
      ],
    });
    this.#dialog.fill(
      element(
        'p',
        {},
        'For a class at a projector. Each step asks for a prediction, runs, and shows what was measured. What is on the bench comes back afterwards.',
      ),
      this.#list,
    );
  }

  open(): void {
    this.#list.replaceChildren(...LESSONS.map(({ id, lesson }) => this.#row(id, lesson)));
    this.#dialog.open();
  }

  close(): void {
    if (this.#dialog.isOpen) this.#dialog.close();
  }

  #row(id: string, lesson: Lesson): HTMLElement {
    const open = (step: number) => () => {
      this.#dialog.close();
      this.#options.open(lesson, id, step);
    };
    const leftAt = this.#options.leftAt(id);
    const ways = [
      button(leftAt > 0 ? 'From the start' : 'Start', open(0), { 'aria-label': `Start ${lesson.title}` }),
    ];
    if (leftAt > 0)
      ways.unshift(
        button(`Go on at step ${leftAt + 1}`, open(leftAt), {
          class: 'primary',
          'aria-label': `Go on with ${lesson.title} at step ${leftAt + 1}`,
        }),
      );
    return element(
      'li',
      {},
      element('h3', {}, lesson.title),
      element('p', {}, lesson.aim),
      element('div', { class: 'lesson-list-ways' }, ...ways),
    );
  }
}
