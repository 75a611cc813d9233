import { Dialog } from './dialog.ts';
import { button, element, setText } from './dom.ts';

const STAYS = 6000;

/** A button that puts right what a message complains of. */
export interface Remedy {
  readonly label: string;
  readonly action: () => void;
}

export interface Messages {
  /** A short note on the page that goes by itself, and is spoken by a screen reader. */
  note(text: string): void;
  /** Spoken only, for what the page shows elsewhere; `urgent` interrupts. */
  say(text: string, urgent?: boolean): void;
  /** What is wrong, as a list that stays until it is read, and what can be done about it. */
  problems(title: string, problems: readonly string[], consequence: string, remedy?: Remedy): void;
}

export function createMessages(host: HTMLElement): Messages {
  const polite = element('p', { class: 'visually-hidden', 'aria-live': 'polite' });
  const urgent = element('p', { class: 'visually-hidden', 'aria-live': 'assertive' });
  const notes = element('div', { class: 'notes' });
  let shown: Dialog | null = null;
  host.append(polite, urgent, notes);

  const say = (text: string, isUrgent = false) => setText(isUrgent ? urgent : polite, text);

  return {
    say,
    note(text) {
      const note = element('p', { class: 'note' }, text);
      notes.append(note);
      setTimeout(() => note.remove(), STAYS);
      say(text);
    },
    problems(title, problems, consequence, remedy) {
      // A newer message takes the place of one that has not been read yet.
      shown?.close();
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
      shown = dialog;
    },
  };
}

function remedyButton({ label, action }: Remedy, close: () => void): HTMLButtonElement {
  const done = () => {
    close();
    action();
  };
  return button(label, done, { class: 'primary' });
}
