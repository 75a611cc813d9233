import type { Parameters } from '../../shared/core/parameters/table.ts';
import { problemTexts } from '../../shared/core/problem.ts';
import type { MoveLine } from '../../shared/core/scene.ts';
import { readMoveList, writeMoveList } from '../../shared/study/moveList.ts';
import { BENCH_WORDING } from '../bench/bench.ts';
import { Dialog } from '../ui/dialog.ts';
import { button, element } from '../ui/dom.ts';
import { ProblemList } from '../ui/problemList.ts';

const HELP =
  'One move per line, columns separated by tab, semicolon or comma. A header names the columns and their units; time [s] may replace speed, acceleration and jerk. The axis repeats the list.';

/** A move list as text, to type or to paste from a spreadsheet. */
export class MoveListDialog {
  readonly #onUse: (moves: readonly MoveLine[]) => void;
  readonly #problems = new ProblemList('moves-problems');
  readonly #text = element('textarea', {
    rows: 9,
    spellcheck: 'false',
    'aria-label': 'Move list',
    'aria-describedby': this.#problems.element.id,
  });
  readonly #dialog = new Dialog({
    title: 'Move list',
    closeLabel: 'Cancel',
    focus: 'control',
    buttons: [button('Use this list', () => this.#use(), { class: 'primary' })],
  }).fill(element('p', {}, HELP), this.#text, this.#problems.element);
  #parameters: Parameters | null = null;

  constructor(onUse: (moves: readonly MoveLine[]) => void) {
    this.#onUse = onUse;
  }

  /** Shows a list to be edited; `parameters` give the limits that its lines must keep. */
  open(moves: readonly MoveLine[], parameters: Parameters): void {
    this.#parameters = parameters;
    this.#text.value = writeMoveList(moves);
    this.#problems.show([]);
    this.#dialog.open();
  }

  #use(): void {
    if (!this.#parameters) return;
    const read = readMoveList(this.#text.value, this.#parameters);
    if ('problems' in read) {
      this.#problems.show(problemTexts(read.problems, BENCH_WORDING));
      return;
    }
    this.#dialog.close();
    this.#onUse(read.moves);
  }
}
