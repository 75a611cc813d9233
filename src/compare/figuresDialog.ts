import { inUnit } from '../../shared/core/format.ts';
import {
  MOVE_FIGURE_NAMES,
  MOVE_FIGURES,
  type MoveFigureName,
  moveFigureText,
} from '../../shared/figures/moveFigures.ts';
import type { MoveFigures } from '../../shared/protocol/axis.ts';
import { Dialog } from '../ui/dialog.ts';
import { element, setText, symbolNode } from '../ui/dom.ts';
import { figureTable } from '../ui/figureTable.ts';

/** Every figure of the last move with its definition. */
export class FiguresDialog {
  readonly #dialog = new Dialog({ title: 'Figures of the last move', class: 'wide' });
  readonly #which = element('p');
  readonly #values = new Map<MoveFigureName, HTMLElement>();
  readonly #account = element('p');
  #newest: MoveFigures | null = null;
  #energyResidual = 0;

  constructor() {
    const rows = MOVE_FIGURE_NAMES.map((name) => {
      const { label, definition, quantity } = MOVE_FIGURES[name];
      const value = element('td', { class: 'quantity', style: `--tint: var(--q-${quantity})` }, '—');
      this.#values.set(name, value);
      const meaning = element('td', { class: 'meaning' }, ...withSymbols(definition));
      return { head: label, cells: [value, meaning] };
    });
    this.#dialog.fill(
      this.#which,
      figureTable({ class: 'dialog-table', columns: ['Figure', 'Value', 'Meaning'], rows }),
      this.#account,
    );
  }

  open(): void {
    this.#fill();
    this.#dialog.open();
  }

  /** The figures of another move, also while the dialog is open; `energyResidual` of the run, as a share of what went through. */
  show(move: MoveFigures | null, energyResidual: number): void {
    this.#energyResidual = energyResidual;
    if (move === this.#newest) return;
    this.#newest = move;
    if (this.#dialog.isOpen) this.#fill();
  }

  #fill(): void {
    const move = this.#newest;
    setText(
      this.#which,
      move
        ? `Move ${move.index + 1}. The figures change with every finished move.`
        : 'No move finished yet. The figures appear with the first one.',
    );
    setText(
      this.#account,
      `Energy account of the run: ${inUnit(Math.abs(this.#energyResidual), '', 2)} of the throughput is unaccounted for; 10⁻⁶ is allowed.`,
    );
    for (const [name, value] of this.#values) setText(value, move ? moveFigureText(name, move[name]) : '—');
  }
}

/** A text with its symbols, such as i_d, set as symbols. */
function withSymbols(text: string): (Node | string)[] {
  return text.split(/(\b[A-Za-z]_[a-z]+)/).map((part, i) => (i % 2 === 1 ? symbolNode(part) : part));
}
