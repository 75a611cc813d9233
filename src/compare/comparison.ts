import { compareMoves, compareParameters } from '../../shared/comparison.ts';
import type { AxisStatus, MoveFigures } from '../../shared/protocol.ts';
import type { Scene } from '../../shared/scene.ts';
import type { Trace } from '../../shared/trace.ts';
import { button, element } from '../app/dom.ts';
import type { ColumnSource } from '../charts/columnBuffer.ts';
import type { History } from '../history/history.ts';
import { differenceTable } from './differenceTable.ts';
import { Ghost } from './ghost.ts';
import { laidTrace } from './laidTrace.ts';
import { MoveLog } from './moveLog.ts';
import { counterpart, type PinnedRun, pinRun } from './pinnedRun.ts';

export interface ComparisonOptions {
  readonly history: History;
  /** What is to be drawn beneath the present run; null: nothing. */
  onPinned(ghost: ColumnSource | null): void;
}

/** The present run beside a pinned one: laid over it in the charts, and in figures in a dialog. */
export class Comparison {
  readonly element: HTMLDialogElement;
  private readonly log = new MoveLog();
  private readonly tables = element('div', { class: 'dialog-scroll' });
  private status: AxisStatus | null = null;
  private pinned: PinnedRun | null = null;
  private ghost: Ghost | null = null;

  constructor(
    private scene: Scene,
    private readonly options: ComparisonOptions,
  ) {
    this.element = element(
      'dialog',
      { class: 'dialog wide', 'aria-labelledby': 'differences-title' },
      element(
        'h2',
        { id: 'differences-title', tabindex: -1, autofocus: true },
        'Differences from the pinned run',
      ),
      this.tables,
      button('Close', () => this.element.close()),
    );
  }

  get isPinned(): boolean {
    return this.ghost !== null;
  }

  /** The last move, if it was made with the present parameters from its start to its end. */
  get moveOfPresent(): MoveFigures | null {
    const last = this.log.finished.at(-1);
    return last && this.log.isOfPresent(last) ? last.figures : null;
  }

  /** Another set-up of the axis. */
  setScene(scene: Scene): void {
    this.scene = scene;
    this.log.changed(this.status);
    this.refresh();
  }

  take(run: number, status: AxisStatus): void {
    this.status = status;
    if (!this.log.take(run, status)) return;
    this.ghost?.align(this.log.moves);
    this.refresh();
  }

  /** Pins the last cycle, or lets go of the pinned one. Returns what to say of it. */
  toggle(): string {
    if (this.ghost) {
      this.lay(null, null);
      return 'Unpinned.';
    }
    const pinned = pinRun(this.options.history, this.log, this.scene);
    if (!pinned) return 'Nothing to pin yet: let a move finish first.';
    this.lay(pinned, new Ghost(pinned));
    return `Pinned ${movesText(pinned.moves.map(({ index }) => index))}. Change something and compare.`;
  }

  open(): void {
    this.fill();
    this.element.showModal();
  }

  /** Lays a measured trace over the run, in place of a pinned one. */
  layTrace(trace: Trace): void {
    this.lay(null, new Ghost(laidTrace(trace, this.scene)));
  }

  private lay(pinned: PinnedRun | null, ghost: Ghost | null): void {
    this.pinned = pinned;
    this.ghost = ghost;
    this.ghost?.align(this.log.moves);
    this.options.onPinned(this.ghost);
  }

  private refresh(): void {
    if (this.element.open) this.fill();
  }

  private fill(): void {
    this.tables.replaceChildren(
      ...(this.pinned ? this.contents(this.pinned) : [element('p', {}, NOT_PINNED)]),
    );
  }

  private contents(pinned: PinnedRun): Node[] {
    const { parameters } = this.scene;
    const differing = compareParameters(pinned.parameters, parameters);
    const columns = ['Pinned', 'Now'] as const;
    const settings =
      differing.length > 0
        ? differenceTable('Parameter', columns, differing)
        : element('p', {}, 'Every parameter is set as it was.');
    return [this.moves(pinned, columns), settings].flat();
  }

  private moves(pinned: PinnedRun, columns: readonly [string, string]): Node[] {
    const now = this.log.finished.at(-1);
    if (!now) return [element('p', {}, 'No move of the present run has finished yet.')];
    const before = counterpart(pinned, now) ?? pinned.moves.at(-1)!;
    const mixed = this.log.isOfPresent(now)
      ? ''
      : ' Something was changed meanwhile: the next whole move tells.';
    const elsewhere = pinned.title === this.scene.title ? '' : ` of ${pinned.title}`;
    const words = `Pinned: move ${before.index + 1}${elsewhere}. Now: move ${now.index + 1} of ${this.scene.title}.${mixed}`;
    const differences = compareMoves(before.figures, now.figures, this.scene.parameters);
    return [element('p', {}, words), differenceTable('Figure', columns, differences)];
  }
}

const NOT_PINNED =
  'No run is pinned. “Pin run” keeps the last cycle with its figures and parameters, to compare with what comes after.';

function movesText(indices: readonly number[]): string {
  const [first = 0, last = 0] = [indices[0], indices.at(-1)];
  return first === last ? `move ${first + 1}` : `moves ${first + 1} to ${last + 1}`;
}
