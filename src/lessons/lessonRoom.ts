import './lessons.css';
import { SHELF } from '../../scenes/index.ts';
import { LESSONS } from '../../scenes/lessons/index.ts';
import { problemTexts } from '../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../shared/core/sentence.ts';
import { readLesson } from '../../shared/files/lesson/lessonFile.ts';
import { lessonLink, readLessonLink } from '../../shared/files/lessonLink.ts';
import type { Lesson } from '../../shared/lesson/lesson.ts';
import { copyLink } from '../ui/copyLink.ts';
import { FocusVisit } from '../ui/focusVisit.ts';
import type { Actions } from '../ui/keys.ts';
import type { Messages } from '../ui/messages.ts';
import { prefer, preferredEntries } from '../ui/preferences.ts';
import { listenForClicker } from './clicker.ts';
import type { LessonBench } from './lessonBench.ts';
import { LessonMenu } from './lessonMenu.ts';
import { LessonPane } from './lessonPane.ts';
import { LessonPlayer } from './player.ts';
import { markPlaces } from './pointers.ts';
import { LessonRecorder } from './record/lessonRecorder.ts';

interface LessonRoomOptions {
  readonly messages: Messages;
  readonly bench: LessonBench;
  openFile(): void;
  /** What the keys of the bench do. */
  readonly common: Actions;
  /** A lesson begins or has ended. */
  onTeaching(teaching: boolean): void;
}

/** Lessons on the page: the menu, and the lesson that is taught. */
export class LessonRoom {
  readonly element: HTMLElement;
  readonly #options: LessonRoomOptions;
  readonly #menu: LessonMenu;
  readonly #pane: LessonPane;
  readonly #recorder: LessonRecorder;
  readonly #focus = new FocusVisit();
  #player: LessonPlayer | null = null;
  /** Of the shelf; null: from a file. */
  #id: string | null = null;

  constructor(options: LessonRoomOptions) {
    this.#options = options;
    this.#menu = new LessonMenu({
      leftAt,
      open: (lesson, id, step) => this.#open(lesson, id, step),
      openFile: options.openFile,
      record: () => this.#record(),
    });
    this.#recorder = new LessonRecorder({
      messages: options.messages,
      bench: options.bench,
      teach: (lesson) => this.#open(lesson, null, 0),
    });
    this.#pane = new LessonPane({
      next: () => this.#next(),
      back: () => this.#back(),
      choose: (answer) => this.#player?.choose(answer),
      leave: () => this.leave(),
      edit: () => this.#edit(),
    });
    this.element = this.#pane.element;
    this.element.hidden = true;
    listenForClicker({
      next: () => this.#next(),
      back: () => this.#back(),
      isTeaching: () => this.#player !== null,
    });
  }

  /** What the keyboard does in a lesson; null while none is taught. */
  get keys(): Partial<Actions> | null {
    const player = this.#player;
    if (!player) return null;
    const { common } = this.#options;
    return {
      ...common,
      scene: (index) => player.choose(index),
      reset: () => player.go(player.index),
      runOrPause: () => (player.phase === 'asked' ? player.next() : common.runOrPause()),
      copyLink: () => this.#copyLink(player),
    };
  }

  /** Stands on the page while a step is recorded. */
  get recordBar(): HTMLElement {
    return this.#recorder.bar;
  }

  openMenu(): void {
    this.#menu.open();
  }

  openText(name: string, text: string): void {
    const read = readLesson(text, SHELF);
    if ('lesson' in read) this.#open(read.lesson, null, 0);
    else
      this.#options.messages.problems(
        `${name} was not opened`,
        problemTexts(read.problems, AS_WRITTEN),
        'The bench is unchanged. What is wrong with the lesson:',
      );
  }

  openLink(fragment: string): void {
    const { id, step } = readLessonLink(fragment);
    const found = LESSONS.find((each) => each.id === id);
    if (found) this.#open(found.lesson, found.id, step);
    else
      this.#options.messages.problems(
        'The link was not opened',
        [`There is no lesson “${id}”. The lessons are ${LESSONS.map((each) => each.id).join(', ')}.`],
        'The bench is unchanged. What is wrong with the link:',
      );
  }

  leave(): void {
    if (!this.#player) return;
    this.#player = null;
    markPlaces([]);
    this.#options.bench.giveBack();
    this.#options.onTeaching(false);
    this.#focus.leave(this.element);
    this.element.hidden = true;
  }

  #open(lesson: Lesson, id: string | null, step: number): void {
    this.#menu.close();
    this.#id = id;
    const player: LessonPlayer = new LessonPlayer(lesson, this.#options.bench, () => this.#show(player));
    const isTeaching = this.#player !== null;
    this.#player = player;
    this.element.hidden = false;
    if (!isTeaching) this.#focus.enter(this.#pane.body);
    this.#options.onTeaching(true);
    player.go(step);
  }

  #record(): void {
    this.leave();
    this.#recorder.open();
  }

  /** The lesson that is taught, to be written on. */
  #edit(): void {
    const lesson = this.#player?.lesson;
    this.leave();
    if (lesson) this.#recorder.edit(lesson);
  }

  #next(): void {
    if (this.#pane.readOn()) return;
    if (this.#player?.isAtEnd) this.leave();
    else this.#player?.next();
  }

  #back(): void {
    if (!this.#pane.readBack()) this.#player?.back();
  }

  #show(player: LessonPlayer): void {
    if (player !== this.#player) return;
    this.#pane.show(player);
    markPlaces(player.step.pointAt);
    if (this.#id !== null) remember(this.#id, player.isAtEnd ? 0 : player.index);
  }

  #copyLink({ index, lesson }: LessonPlayer): void {
    const { messages } = this.#options;
    if (this.#id === null) messages.note(`${lesson.title} is from a file: pass on the file itself.`);
    else
      void copyLink(lessonLink(this.#id, index), messages, 'Link copied. It opens the lesson at this step.');
  }
}

/** The step at which a lesson was left, from 0. */
function leftAt(id: string): number {
  const step = preferredEntries('lesson')[id];
  return typeof step === 'number' && Number.isInteger(step) && step > 0 ? step : 0;
}

function remember(id: string, step: number): void {
  prefer('lesson', JSON.stringify({ ...preferredEntries('lesson'), [id]: step }));
}
