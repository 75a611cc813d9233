import type { BenchActions } from '../../bench/benchActions.ts';
import type { Store } from '../../bench/store.ts';
import { useGains } from '../../bench/useGains.ts';
import { SnapshotsDialog } from '../../compare/snapshotsDialog.ts';
import { MoveListDialog } from '../../tuning/moveListDialog.ts';
import type { Messages } from '../../ui/messages.ts';
import { EarlierWorkDialog } from '../kept/earlierWorkDialog.ts';
import type { Keeper } from '../kept/keeper.ts';
import { createHelp } from './help.ts';
import { ProjectNameDialog } from './projectNameDialog.ts';
import { createTested } from './testedDialog.ts';

interface SmallDialogsOptions {
  readonly store: Store;
  readonly bench: BenchActions;
  readonly messages: Messages;
  readonly keeper: () => Keeper;
}

/** The smaller dialogs over the bench: one part of the page, which comes with the first that is asked for. */
export class SmallDialogs {
  readonly help = createHelp();
  readonly tested = createTested();
  readonly snapshots: SnapshotsDialog;
  readonly projectName: ProjectNameDialog;
  readonly earlierWork: EarlierWorkDialog;
  readonly #store: Store;
  readonly #moveList: MoveListDialog;

  constructor({ store, bench, messages, keeper }: SmallDialogsOptions) {
    this.#store = store;
    this.projectName = new ProjectNameDialog(store);
    this.earlierWork = new EarlierWorkDialog(keeper());
    this.#moveList = new MoveListDialog((moves) => bench.useMoves(moves));
    this.snapshots = new SnapshotsDialog({
      parameters: () => store.bench.parameters,
      onApply: (changes, text) => useGains(store, messages, changes, text),
    });
  }

  openMoveList(): void {
    const { origin, parameters } = this.#store.bench;
    this.#moveList.open(origin.moves, parameters);
  }
}
