import { Dialog } from './dialog.ts';
import { button, element } from './dom.ts';

const STAYS = 6000;

/** A button that answers a message. */
interface Remedy {
  readonly label: string;
  readonly action: () => void;
}

/** What the page tells a person: notes that go by themselves, problems that stay until they are read. */
export class Messages {
  readonly #polite = element('p', { class: 'visually-hidden', 'aria-live': 'polite' });
  readonly #urgent = element('p', { class: 'visually-hidden', 'aria-live': 'assertive' });
  readonly #notes = element('div', { class: 'notes' });
  #problems: Dialog | null = null;

  constructor(host: HTMLElement) {
    host.append(this.#polite, this.#urgent, this.#notes);
  }

  /** A short note on the page that goes by itself, and is spoken by a screen reader. */
  note(text: string): void {
    const note = element('p', { class: 'note' }, text);
    this.#notes.append(note);
    setTimeout(() => note.remove(), STAYS);
    this.say(text);
  }

  /** An offer that stays on the page until it is answered, and leaves everything else alone. */
  offer(title: string, text: string, answers: readonly Remedy[]): void {
    const end = () => offer.remove();
    const offer = element(
      'section',
      { class: 'note offer', 'aria-label': title },
      element('p', {}, text),
      element(
        'div',
        { class: 'dialog-ways' },
        ...answers.map((answer, index) => remedyButton(answer, end, index === 0)),
      ),
    );
    this.#notes.append(offer);
    this.say(text);
  }

  /** Spoken only, for what the page shows elsewhere; `urgent` interrupts. A fresh text is spoken, also where it is like the last. */
  say(text: string, urgent = false): void {
    (urgent ? this.#urgent : this.#polite).replaceChildren(text);
  }

  /** What is wrong, as a list that stays until it is read, and what can be done about it. */
  problems(title: string, problems: readonly string[], consequence: string, remedy?: Remedy): void {
    // A newer message takes the place of one that has not been read yet.
    this.#problems?.close();
    const dialog = new Dialog({
      title,
      focus: 'control',
      buttons: remedy ? [remedyButton(remedy, () => dialog.close())] : [],
      onClose: () => dialog.element.remove(),
    });
    dialog.fill(
      element('p', {}, consequence),
      element('ul', {}, ...problems.map((problem) => element('li', {}, problem))),
    );
    dialog.open();
    this.#problems = dialog;
  }
}

function remedyButton({ label, action }: Remedy, close: () => void, isPrimary = true): HTMLButtonElement {
  const done = () => {
    close();
    action();
  };
  return button(label, done, isPrimary ? { class: 'primary' } : {});
}
