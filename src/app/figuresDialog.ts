import { MOVE_FIGURE_NAMES, MOVE_FIGURES, moveFigureText } from '../../shared/figures/moveFigures.ts';
import type { MoveFigures } from '../../shared/protocol/axis.ts';
import { button, element, setText, symbolNode } from '../ui/dom.ts';

export interface FiguresDialog {
  readonly element: HTMLDialogElement;
  open(): void;
  /** The figures of another move, also while the dialog is open. */
  show(move: MoveFigures | null): void;
}

/** Every figure of the last move with its definition. */
export function createFiguresDialog(): FiguresDialog {
  const values = MOVE_FIGURE_NAMES.map((name) =>
    element('td', { class: 'quantity', style: `--tint: var(--q-${MOVE_FIGURES[name].quantity})` }, '—'),
  );
  const which = element('p');
  const rows = MOVE_FIGURE_NAMES.map((name, i) => {
    const { label, definition } = MOVE_FIGURES[name];
    return element(
      'tr',
      {},
      element('th', { scope: 'row' }, label),
      values[i]!,
      element('td', { class: 'meaning' }, ...withSymbols(definition)),
    );
  });
  const head = ['Figure', 'Value', 'Meaning'].map((label) => element('th', { scope: 'col' }, label));
  const dialog = element(
    'dialog',
    { class: 'dialog wide', 'aria-labelledby': 'figures-title' },
    // Else the button at the end would have the focus, and the dialog begin there.
    element('h2', { id: 'figures-title', tabindex: -1, autofocus: true }, 'Figures of the last move'),
    which,
    element(
      'table',
      { class: 'dialog-table' },
      element('thead', {}, element('tr', {}, ...head)),
      element('tbody', {}, ...rows),
    ),
    button('Close', () => dialog.close()),
  );
  let newest: MoveFigures | null = null;

  function fill(): void {
    const move = newest;
    setText(
      which,
      move
        ? `Move ${move.index + 1}. They change with every finished move.`
        : 'No move finished yet. The figures come with the first one.',
    );
    for (const [i, name] of MOVE_FIGURE_NAMES.entries()) {
      setText(values[i]!, move ? moveFigureText(name, move[name]) : '—');
    }
  }

  return {
    element: dialog,
    open() {
      fill();
      dialog.showModal();
    },
    show(move) {
      if (move === newest) return;
      newest = move;
      if (dialog.open) fill();
    },
  };
}

/** A text with its symbols, such as i_d, set as symbols. */
function withSymbols(text: string): (Node | string)[] {
  return text.split(/(\b[A-Za-z]_[a-z]+)/).map((part, i) => (i % 2 === 1 ? symbolNode(part) : part));
}
