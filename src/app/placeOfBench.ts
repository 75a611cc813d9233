import { byId } from '../ui/dom.ts';
import { FocusVisit } from '../ui/focusVisit.ts';

/** The place of the bench, which a room takes with the focus, and gives back. */
export class PlaceOfBench {
  readonly #focus = new FocusVisit();
  #isTaken = false;

  get isTaken(): boolean {
    return this.#isTaken;
  }

  /** `show` brings the room to sight, whose heading has the focus then. */
  take(heading: HTMLElement, show: () => void): void {
    show();
    if (!this.#isTaken) this.#focus.enter(heading);
    this.#isTaken = true;
    byId('bench').hidden = true;
  }

  /** `hide` takes the room out of sight. */
  giveBack(room: HTMLElement, hide: () => void): void {
    this.#isTaken = false;
    byId('bench').hidden = false;
    this.#focus.leave(room);
    hide();
  }
}
