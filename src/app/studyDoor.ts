import type { StudyRoom, StudyRoomOptions } from '../study/studyRoom.ts';
import { byId } from '../ui/dom.ts';
import type { Actions } from '../ui/keys.ts';
import type { KeptStudy } from './kept/work.ts';
import { PlaceOfBench } from './placeOfBench.ts';

interface StudyDoorOptions extends Omit<StudyRoomOptions, 'leave'> {
  /** The bench goes out of sight, or comes back. */
  onBench(shown: boolean): void;
}

/** Between the bench and the study, one of which is shown. The study is fetched when it is first asked for. */
export class StudyDoor {
  readonly #options: StudyDoorOptions;
  readonly #place = new PlaceOfBench();
  #room: StudyRoom | null = null;

  constructor(options: StudyDoorOptions) {
    this.#options = options;
  }

  /** What the keyboard does in the study; null while the bench is shown. */
  get keys(): Partial<Actions> | null {
    return this.#place.isTaken ? (this.#room?.keys ?? null) : null;
  }

  /** The study as it stands, with so many of its steps; null: none was opened. */
  kept(depth: number): KeptStudy | null {
    return this.#room && { ...this.#room.kept(depth), isShown: this.#place.isTaken };
  }

  /** Goes on with a study that was kept; where the bench was shown, it is shown again. */
  async restore({ text, steps, isShown }: KeptStudy): Promise<void> {
    const room = await this.open();
    room.restore(text, steps);
    if (!isShown) this.#leave(room);
  }

  async openText(name: string, text: string): Promise<void> {
    (await this.open()).openText(name, text);
  }

  async openLink(fragment: string): Promise<void> {
    (await this.open()).openLink(fragment);
  }

  /** Shows the study as it was left, or the bench. */
  async toggle(): Promise<void> {
    if (this.#room && this.#place.isTaken) this.#leave(this.#room);
    else await this.open();
  }

  async open(): Promise<StudyRoom> {
    const { StudyRoom } = await import('../study/studyRoom.ts');
    if (!this.#room) {
      const { openOnBench } = this.#options;
      const room: StudyRoom = new StudyRoom({
        ...this.#options,
        openOnBench: (scene) => {
          this.#leave(room);
          openOnBench(scene);
        },
        leave: () => this.#leave(room),
      });
      byId('bench').after(room.element);
      this.#room = room;
    }
    const room = this.#room;
    this.#place.take(room.heading, () => room.setShown(true));
    this.#options.onBench(false);
    return room;
  }

  #leave(room: StudyRoom): void {
    this.#place.giveBack(room.element, () => room.setShown(false));
    this.#options.onBench(true);
  }
}
