/** The focus goes into what comes into sight, and back to where it was once that is out of sight again. */
export class FocusVisit {
  #before: Element | null = null;

  /** `place`: what in it has the focus first. */
  enter(place: HTMLElement): void {
    this.#before = document.activeElement;
    place.focus();
  }

  /** To be called while both are in sight. Whoever has gone elsewhere in the meantime stays there. */
  leave(from: HTMLElement): void {
    const focus = document.activeElement;
    if (!(focus instanceof HTMLElement) || !from.contains(focus)) return;
    if (this.#before instanceof HTMLElement && this.#before !== document.body) this.#before.focus();
    else focus.blur();
  }
}
