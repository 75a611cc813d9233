import type { StudyRoom, StudyRoomOptions } from '../study/studyRoom.ts';
import { byId } from '../ui/dom.ts';
import type { Actions } from '../ui/keys.ts';
import type { KeptStudy } from './kept/work.ts';

interface StudyDoorOptions extends Omit<StudyRoomOptions, 'leave'> {
  /** The bench goes out of sight, or comes back. */
  onBench(shown: boolean): void;
}

/** Between the bench and the study, one of which is shown. The study is fetched when it is first asked for. */
export class StudyDoor {
  readonly #options: StudyDoorOptions;
  #room: StudyRoom | null = null;
  #isOpen = false;

  constructor(options: StudyDoorOptions) {
    this.#options = options;
  }

  /** What the keyboard does in the study; null while the bench is shown. */
  get keys(): Partial<Actions> | null {
    return this.#isOpen ? (this.#room?.keys ?? null) : null;
  }

  /** The study as it stands, with so many of its steps; null: none was opened. */
  kept(depth: number): KeptStudy | null {
    return this.#room && { ...this.#room.kept(depth), isShown: this.#isOpen };
  }

  /** Goes on with a study that was kept; where the bench was shown, it is shown again. */
  async restore({ text, steps, isShown }: KeptStudy): Promise<void> {
    const room = await this.open();
    room.restore(text, steps);
    if (!isShown) this.#show(false);
  }

  async openText(name: string, text: string): Promise<void> {
    (await this.open()).openText(name, text);
  }

  async openLink(fragment: string): Promise<void> {
    (await this.open()).openLink(fragment);
  }

  /** Shows the study as it was left, or the bench. */
  async toggle(): Promise<void> {
    if (this.#isOpen) this.#show(false);
    else await this.open();
  }

  async open(): Promise<StudyRoom> {
    const { StudyRoom } = await import('../study/studyRoom.ts');
    if (!this.#room) {
      const { openOnBench } = this.#options;
      this.#room = new StudyRoom({
        ...this.#options,
        openOnBench: (scene) => {
          this.#show(false);
          openOnBench(scene);
        },
        leave: () => this.#show(false),
      });
      byId('bench').after(this.#room.element);
    }
    this.#show(true);
    return this.#room;
  }

  #show(open: boolean): void {
    this.#isOpen = open;
    byId('bench').hidden = open;
    this.#room?.setShown(open);
    this.#options.onBench(!open);
  }
}
