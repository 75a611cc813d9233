import { SHELF } from '../../../scenes/index.ts';
import { problemTexts } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { readLesson } from '../../../shared/files/lesson/lessonFile.ts';
import { writeLesson } from '../../../shared/files/lesson/writeLesson.ts';
import type { Lesson } from '../../../shared/lesson/lesson.ts';
import type { Recording } from '../../../shared/lesson/recordedStep.ts';
import { Dialog } from '../../ui/dialog.ts';
import { button, element } from '../../ui/dom.ts';
import { fileName, saveText } from '../../ui/files.ts';
import type { Messages } from '../../ui/messages.ts';
import { ProblemList } from '../../ui/problemList.ts';
import { changedIn, NEW_LESSON, withRecording } from './draft.ts';
import { RecordBar } from './recordBar.ts';
import { stepEditor } from './stepEditor.ts';
import { linesField, linesOf, paragraphField, textField } from './textFields.ts';

/** The bench as it is recorded. */
export interface RecordedBench {
  /** Back to the start of what is on the bench, and at rest there. */
  rest(): void;
  /** What was done since. @throws when the simulation has stopped */
  recording(): Promise<Recording>;
}

interface LessonRecorderOptions {
  readonly messages: Messages;
  readonly bench: RecordedBench;
  /** Teaches the lesson as it stands. */
  teach(lesson: Lesson): void;
}

/** Records steps from what is done on the bench, and lets a trainer write what is said and asked in them. */
export class LessonRecorder {
  readonly bar: HTMLElement;
  readonly #options: LessonRecorderOptions;
  readonly #dialog: Dialog;
  readonly #bar: RecordBar;
  readonly #problems = new ProblemList('lesson-problems');
  readonly #back = button('Lesson before', () => this.edit(this.#before), {
    title: 'Brings back the lesson that was here before this one',
  });
  #lesson: Lesson = NEW_LESSON;
  #before: Lesson = NEW_LESSON;

  constructor(options: LessonRecorderOptions) {
    this.#options = options;
    this.#bar = new RecordBar({
      keep: () => void this.#keep(),
      cancel: () => this.#cancel(),
    });
    this.bar = this.#bar.element;
    this.#dialog = new Dialog({
      title: 'Record a lesson',
      class: 'wide',
      closeLabel: 'Close and keep',
      buttons: [
        button('Record a step', () => this.#record(), { class: 'primary' }),
        button('Try the lesson', () => this.#try()),
        button('Save lesson', () => this.#save()),
        button('New lesson', () => this.edit(NEW_LESSON)),
        this.#back,
      ],
    });
  }

  /** Goes on with the lesson that was being written. */
  open(): void {
    this.#show(this.#lesson.steps.length - 1);
    this.#dialog.open();
  }

  /** Puts another lesson in its place; the one that was here can be brought back. */
  edit(lesson: Lesson): void {
    this.#before = this.#lesson;
    this.#lesson = lesson;
    this.#show(0);
    if (!this.#dialog.isOpen) this.#dialog.open();
  }

  #write(change: (now: Lesson) => Lesson): void {
    this.#lesson = change(this.#lesson);
  }

  /** `focus` is the step that is unfolded. */
  #show(focus: number): void {
    const { title, aim, notes, steps } = this.#lesson;
    this.#back.hidden = this.#before.steps.length === 0;
    this.#problems.show([]);
    const editors = steps.map((step, index) =>
      element(
        'li',
        {},
        stepEditor({
          lesson: this.#lesson,
          index,
          isOpen: index === focus,
          changed: changedIn(
            step,
            SHELF.scenes.find(({ id }) => id !== null && id === step.scene.id),
          ),
          write: (change) => this.#write(change),
          rearrange: (change, next) => {
            this.#write(change);
            this.#show(next);
            this.#dialog.element.querySelectorAll('summary')[next]?.focus();
          },
        }),
      ),
    );
    this.#dialog.fill(
      element(
        'p',
        {},
        'Set up the bench as the step is to begin, then press Record a step. What you change, pull and run from then on becomes the step; it is shown with the view that the bench has at the end.',
      ),
      textField('Title', title, (text) => this.#write((now) => ({ ...now, title: text }))),
      paragraphField(
        'What the class knows afterwards',
        aim,
        (text) => this.#write((now) => ({ ...now, aim: text })),
        2,
      ),
      linesField(
        'Notes for the trainer, one a line',
        notes.join('\n'),
        (text) => this.#write((now) => ({ ...now, notes: linesOf(text) })),
        2,
      ),
      element('ol', { class: 'lesson-editors' }, ...editors),
      this.#problems.element,
    );
  }

  #record(): void {
    this.#dialog.close();
    this.#options.bench.rest();
    this.#bar.show(this.#lesson.steps.length + 1);
  }

  async #keep(): Promise<void> {
    this.#bar.hide();
    try {
      const recording = await this.#options.bench.recording();
      this.#write((now) => withRecording(now, recording));
    } catch {
      this.#options.messages.note('Nothing was recorded: the simulation has stopped. Reset starts it again.');
    }
    this.open();
  }

  #cancel(): void {
    this.#bar.hide();
    this.open();
  }

  /** The lesson as it would be read from its file, or null once it has been told what is missing. */
  #checked(): Lesson | null {
    const read = readLesson(writeLesson(this.#lesson, SHELF), SHELF);
    if ('lesson' in read) return read.lesson;
    this.#problems.show(problemTexts(read.problems, AS_WRITTEN));
    this.#problems.element.scrollIntoView({ block: 'nearest' });
    return null;
  }

  #try(): void {
    const lesson = this.#checked();
    if (!lesson) return;
    this.#dialog.close();
    this.#options.teach(lesson);
  }

  #save(): void {
    const lesson = this.#checked();
    if (!lesson) return;
    const name = fileName(lesson.title, 'lesson.json');
    saveText(name, writeLesson(lesson, SHELF));
    this.#options.messages.note(`Lesson saved as ${name}. Open brings it back, to teach or to edit.`);
  }
}
