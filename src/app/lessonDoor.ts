import type { LessonBench } from '../lessons/lessonBench.ts';
import type { LessonRoom } from '../lessons/lessonRoom.ts';
import { byId } from '../ui/dom.ts';
import type { Actions } from '../ui/keys.ts';
import type { Messages } from '../ui/messages.ts';

interface LessonDoorOptions {
  readonly messages: Messages;
  readonly bench: LessonBench;
  openFile(): void;
  readonly common: Actions;
}

/** The way into the lessons, which are loaded when one is first asked for. */
export class LessonDoor {
  readonly #options: LessonDoorOptions;
  #room: LessonRoom | null = null;

  constructor(options: LessonDoorOptions) {
    this.#options = options;
  }

  /** What the keyboard does in a lesson; null while none is taught. */
  get keys(): Partial<Actions> | null {
    return this.#room?.keys ?? null;
  }

  async openMenu(): Promise<void> {
    (await this.#open()).openMenu();
  }

  async openText(name: string, text: string): Promise<void> {
    (await this.#open()).openText(name, text);
  }

  async openLink(fragment: string): Promise<void> {
    (await this.#open()).openLink(fragment);
  }

  /** Ends the lesson that is taught, if there is one: the bench is as it was before. */
  leave(): void {
    this.#room?.leave();
  }

  async #open(): Promise<LessonRoom> {
    const { LessonRoom } = await import('../lessons/lessonRoom.ts');
    if (!this.#room) {
      this.#room = new LessonRoom({
        ...this.#options,
        onTeaching: (teaching) => byId('bench').classList.toggle('has-lesson', teaching),
      });
      byId('panel').after(this.#room.element);
      byId('caption').append(this.#room.recordBar);
    }
    return this.#room;
  }
}
