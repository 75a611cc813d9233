import type { Problem } from '../../shared/core/problem.ts';
import { button, element, setText } from './dom.ts';

const STAYS = 6000;

export interface Messages {
  /** A short note on the page that goes by itself, and is spoken by a screen reader. */
  note(text: string): void;
  /** Spoken only, for what the page shows elsewhere; `urgent` interrupts. */
  say(text: string, urgent?: boolean): void;
  /** What is wrong with something that was opened, as a list that stays until it is read. */
  problems(title: string, problems: readonly Problem[], consequence: string): void;
}

export function createMessages(host: HTMLElement): Messages {
  const polite = element('p', { class: 'visually-hidden', 'aria-live': 'polite' });
  const urgent = element('p', { class: 'visually-hidden', 'aria-live': 'assertive' });
  const notes = element('div', { class: 'notes' });
  const dialog = element('dialog', { class: 'dialog problems', 'aria-labelledby': 'problems-title' });
  host.append(polite, urgent, notes, dialog);

  const say = (text: string, isUrgent = false) => setText(isUrgent ? urgent : polite, text);

  return {
    say,
    note(text) {
      const note = element('p', { class: 'note' }, text);
      notes.append(note);
      setTimeout(() => note.remove(), STAYS);
      say(text);
    },
    problems(title, problems, consequence) {
      dialog.replaceChildren(
        element('h2', { id: 'problems-title' }, title),
        element('p', {}, consequence),
        element('ul', {}, ...problems.map(({ message }) => element('li', {}, message))),
        button('Close', () => dialog.close()),
      );
      dialog.showModal();
    },
  };
}
