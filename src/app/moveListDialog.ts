import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { MoveLine } from '../../shared/core/scene.ts';
import { readMoveList, writeMoveList } from '../../shared/study/moveList.ts';
import { button, element } from '../ui/dom.ts';

export interface MoveListDialog {
  readonly element: HTMLDialogElement;
  /** Shows a list to be edited; `p` gives the limits that its lines must keep. */
  open(moves: readonly MoveLine[], p: Parameters): void;
}

/** A move list as text, to type or to paste from a spreadsheet. */
export function createMoveListDialog(onUse: (moves: readonly MoveLine[]) => void): MoveListDialog {
  let parameters: Parameters;
  const text = element('textarea', {
    rows: 9,
    spellcheck: 'false',
    'aria-label': 'Move list',
    'aria-describedby': 'moves-problems',
  });
  const problems = element('ul', { id: 'moves-problems', class: 'dialog-problems', role: 'alert' });
  const dialog = element(
    'dialog',
    { class: 'dialog', 'aria-labelledby': 'moves-title' },
    element('h2', { id: 'moves-title' }, 'Move list'),
    element(
      'p',
      {},
      'One move a line, columns parted by tab, semicolon or comma. A header names the columns and their units; time [s] may stand in place of speed, acceleration and jerk. The axis goes through the list over and over.',
    ),
    text,
    problems,
    element(
      'div',
      { class: 'dialog-ways' },
      button('Use this list', use, { class: 'primary' }),
      button('Cancel', () => dialog.close()),
    ),
  );

  function use(): void {
    const read = readMoveList(text.value, parameters);
    if ('moves' in read) {
      dialog.close();
      onUse(read.moves);
    } else {
      problems.replaceChildren(...read.problems.map(({ message }) => element('li', {}, message)));
    }
  }

  return {
    element: dialog,
    open(moves, p) {
      parameters = p;
      text.value = writeMoveList(moves);
      problems.replaceChildren();
      dialog.showModal();
    },
  };
}
