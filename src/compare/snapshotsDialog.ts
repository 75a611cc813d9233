import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import { problemTexts } from '../../shared/core/problem.ts';
import { compareParameters } from '../../shared/figures/comparison.ts';
import {
  addSnapshot,
  applySnapshot,
  removeSnapshot,
  renameSnapshot,
  type Snapshot,
  type SnapshotsResult,
} from '../../shared/files/snapshots.ts';
import { BENCH_WORDING } from '../bench/bench.ts';
import { changeSnapshots, keptSnapshots } from '../bench/keptSnapshots.ts';
import { Dialog } from '../ui/dialog.ts';
import { button, element } from '../ui/dom.ts';
import { ProblemList } from '../ui/problemList.ts';
import { differenceTable } from './differenceTable.ts';

interface SnapshotsDialogOptions {
  parameters(): Parameters;
  /** Lays the tuning of a snapshot over the bench, as one step. */
  onApply(changes: ParameterChanges, text: string): void;
}

const NOT_KEPT = 'This browser does not store data for this page: snapshots are lost when it is closed.';

/** Tunings under names, kept in this browser: to keep, to lay over the bench, to compare. */
export class SnapshotsDialog {
  readonly #options: SnapshotsDialogOptions;
  readonly #name = nameInput();
  readonly #problems = new ProblemList();
  readonly #list = element('ul', { class: 'snapshots' });
  readonly #comparison = element('div', { 'aria-live': 'polite' });
  readonly #dialog = new Dialog({ title: 'Tuning snapshots', class: 'wide', focus: 'control' }).fill(
    element('p', {}, 'Gains, filters and rates under a name. They stay in this browser.'),
    element(
      'form',
      { class: 'dialog-ways', onsubmit: (event) => this.#keep(event) },
      element('label', { class: 'snapshot-new' }, 'Name', this.#name),
      element('button', { type: 'submit', class: 'primary' }, 'Keep present tuning'),
    ),
    this.#problems.element,
    this.#list,
    this.#comparison,
  );
  #snapshots: readonly Snapshot[] = [];

  constructor(options: SnapshotsDialogOptions) {
    this.#options = options;
  }

  open(): void {
    const { snapshots, problems } = keptSnapshots();
    this.#snapshots = snapshots;
    this.#comparison.replaceChildren();
    this.#problems.show(problemTexts(problems, BENCH_WORDING));
    this.#show();
    this.#dialog.open();
  }

  #keep(event: Event): void {
    event.preventDefault();
    const { value } = this.#name;
    if (this.#change((list) => addSnapshot(list, value, this.#options.parameters()))) this.#name.value = '';
    this.#name.focus();
  }

  /** Keeps and shows another list, or says why there is none. */
  #change(change: (list: readonly Snapshot[]) => SnapshotsResult): boolean {
    const result = changeSnapshots(change);
    if ('problems' in result) {
      this.#problems.show(problemTexts(result.problems, BENCH_WORDING));
      return false;
    }
    this.#snapshots = result.snapshots;
    this.#comparison.replaceChildren();
    this.#problems.show(result.isStored ? [] : [NOT_KEPT]);
    this.#show();
    return true;
  }

  #show(): void {
    this.#list.replaceChildren(...this.#snapshots.map((snapshot) => this.#entry(snapshot)));
    if (this.#snapshots.length === 0) this.#list.append(element('li', {}, 'No snapshot is kept yet.'));
  }

  #entry(snapshot: Snapshot): HTMLLIElement {
    const action = (text: string, onclick: () => void) =>
      button(text, onclick, { 'aria-label': `${text} ${snapshot.name}` });
    const item = element(
      'li',
      {},
      element('span', { class: 'snapshot-name' }, snapshot.name),
      action('Apply', () => this.#apply(snapshot)),
      action('Compare', () => this.#compare(snapshot)),
      action('Rename', () => this.#beginRenaming(item, snapshot)),
      action('Remove', () => this.#remove(snapshot)),
    );
    return item;
  }

  #apply(snapshot: Snapshot): void {
    const read = applySnapshot(snapshot, this.#options.parameters());
    if ('problems' in read) {
      this.#problems.show(problemTexts(read.problems, BENCH_WORDING));
      return;
    }
    this.#dialog.close();
    this.#options.onApply(read.changes, `snapshot ${snapshot.name}`);
  }

  #compare({ name, tuning }: Snapshot): void {
    const present = this.#options.parameters();
    const differences = compareParameters(present, { ...present, ...tuning });
    this.#comparison.replaceChildren(
      differences.length > 0
        ? differenceTable('Parameter', ['Present', name], differences)
        : element('p', {}, `${name} is the same as the tuning on the bench.`),
    );
  }

  #beginRenaming(item: HTMLLIElement, snapshot: Snapshot): void {
    const input = nameInput(snapshot.name, `New name of ${snapshot.name}`);
    const rename = (event: Event) => {
      event.preventDefault();
      if (this.#change((list) => renameSnapshot(list, snapshot.name, input.value))) this.#name.focus();
    };
    const leave = () => {
      this.#show();
      this.#name.focus();
    };
    item.replaceChildren(
      element(
        'form',
        { class: 'dialog-ways', onsubmit: rename },
        input,
        element('button', { type: 'submit' }, 'Save name'),
        button('Leave it', leave),
      ),
    );
    input.select();
  }

  #remove(snapshot: Snapshot): void {
    const { name: gone } = snapshot;
    const place = this.#snapshots.indexOf(snapshot);
    if (!this.#change((list) => ({ snapshots: removeSnapshot(list, gone) }))) return;
    const restore = (list: readonly Snapshot[]) => {
      const others = removeSnapshot(list, gone);
      return { snapshots: [...others.slice(0, place), snapshot, ...others.slice(place)] };
    };
    const back = button('Restore it', () => this.#change(restore));
    this.#comparison.replaceChildren(element('p', {}, `Removed ${gone}. `, back));
    back.focus();
  }
}

function nameInput(value = '', label?: string): HTMLInputElement {
  return element('input', { type: 'text', maxlength: 60, autocomplete: 'off', value, 'aria-label': label });
}
