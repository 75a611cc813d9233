import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import type { Problem } from '../../shared/core/problem.ts';
import { compareParameters } from '../../shared/figures/comparison.ts';
import {
  addSnapshot,
  applySnapshot,
  removeSnapshot,
  renameSnapshot,
  type Snapshot,
  type SnapshotsResult,
} from '../../shared/files/snapshots.ts';
import { keepSnapshots, keptSnapshots } from '../bench/keptSnapshots.ts';
import { differenceTable } from '../compare/differenceTable.ts';
import { button, element } from '../ui/dom.ts';

export interface SnapshotsDialogOptions {
  parameters(): Parameters;
  /** Lays the tuning of a snapshot over the bench, as one step. */
  onApply(changes: ParameterChanges, text: string): void;
}

export interface SnapshotsDialog {
  readonly element: HTMLDialogElement;
  open(): void;
}

const NOT_KEPT = 'This browser keeps nothing for the page: the snapshots are lost when it is closed.';

/** Tunings under names, kept in this browser: to keep, to lay over the bench, to compare. */
export function createSnapshotsDialog({ parameters, onApply }: SnapshotsDialogOptions): SnapshotsDialog {
  let snapshots: readonly Snapshot[] = [];
  const name = element('input', { type: 'text', maxlength: 60, autocomplete: 'off' });
  const problems = element('ul', { class: 'dialog-problems', role: 'alert' });
  const list = element('ul', { class: 'snapshots' });
  const comparison = element('div', { 'aria-live': 'polite' });
  const keeper = element(
    'form',
    { class: 'dialog-ways', onsubmit: keep },
    element('label', { class: 'snapshot-new' }, 'Name', name),
    element('button', { type: 'submit', class: 'primary' }, 'Keep present tuning'),
  );
  const dialog = element(
    'dialog',
    { class: 'dialog wide', 'aria-labelledby': 'snapshots-title' },
    element('h2', { id: 'snapshots-title' }, 'Tuning snapshots'),
    element('p', {}, 'Gains, filters and rates under a name. They stay in this browser.'),
    keeper,
    problems,
    list,
    comparison,
    button('Close', () => dialog.close()),
  );

  function keep(event: Event): void {
    event.preventDefault();
    if (take(addSnapshot(snapshots, name.value, parameters()))) name.value = '';
    name.focus();
  }

  /** Shows and keeps another list, or says why there is none. */
  function take(result: SnapshotsResult): boolean {
    if ('problems' in result) {
      complain(result.problems);
      return false;
    }
    snapshots = result.snapshots;
    comparison.replaceChildren();
    problems.replaceChildren();
    if (!keepSnapshots(snapshots)) complain([{ field: '', value: undefined, message: NOT_KEPT }]);
    show();
    return true;
  }

  function complain(found: readonly Problem[]): void {
    problems.replaceChildren(...found.map(({ message }) => element('li', {}, message)));
  }

  function show(): void {
    list.replaceChildren(...snapshots.map(entry));
    if (snapshots.length === 0) list.append(element('li', {}, 'No snapshot is kept yet.'));
  }

  function entry(snapshot: Snapshot): HTMLLIElement {
    const way = (text: string, action: () => void) =>
      button(text, action, { 'aria-label': `${text} ${snapshot.name}` });
    const item = element(
      'li',
      {},
      element('span', { class: 'snapshot-name' }, snapshot.name),
      way('Apply', () => apply(snapshot)),
      way('Compare', () => compare(snapshot)),
      way('Rename', () => item.replaceChildren(renamer(snapshot))),
      way('Remove', () => remove(snapshot)),
    );
    return item;
  }

  function apply(snapshot: Snapshot): void {
    const read = applySnapshot(snapshot, parameters());
    if ('problems' in read) {
      complain(read.problems);
      return;
    }
    dialog.close();
    onApply(read.changes, `snapshot ${snapshot.name}`);
  }

  function compare({ name, tuning }: Snapshot): void {
    const present = parameters();
    const differences = compareParameters(present, { ...present, ...tuning });
    comparison.replaceChildren(
      differences.length > 0
        ? differenceTable('Parameter', ['Present', name], differences)
        : element('p', {}, `${name} is tuned as the bench is now.`),
    );
  }

  function renamer(snapshot: Snapshot): HTMLFormElement {
    const field = element('input', {
      type: 'text',
      maxlength: 60,
      autocomplete: 'off',
      value: snapshot.name,
      'aria-label': `New name of ${snapshot.name}`,
    });
    const rename = (event: Event) => {
      event.preventDefault();
      if (take(renameSnapshot(snapshots, snapshot.name, field.value))) name.focus();
    };
    const leave = () => {
      show();
      name.focus();
    };
    // In the next moment it is on the page.
    queueMicrotask(() => field.select());
    return element(
      'form',
      { class: 'dialog-ways', onsubmit: rename },
      field,
      element('button', { type: 'submit' }, 'Save name'),
      button('Leave it', leave),
    );
  }

  function remove({ name: gone }: Snapshot): void {
    const before = snapshots;
    take({ snapshots: removeSnapshot(snapshots, gone) });
    const back = button('Put it back', () => take({ snapshots: before }));
    comparison.replaceChildren(element('p', {}, `Removed ${gone}. `, back));
    back.focus();
  }

  return {
    element: dialog,
    open() {
      const kept = keptSnapshots();
      snapshots = kept.snapshots;
      comparison.replaceChildren();
      complain(kept.problems);
      show();
      dialog.showModal();
    },
  };
}
