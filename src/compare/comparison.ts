import { at } from '../../shared/core/at.ts';
import { ranged } from '../../shared/core/format.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { compareFigures, compareMoves, compareParameters } from '../../shared/figures/comparison.ts';
import type { AxisStatus, MoveFigures } from '../../shared/protocol/axis.ts';
import type { Trace } from '../../shared/protocol/trace.ts';
import type { History } from '../history/history.ts';
import type { ColumnSource } from '../plot/strip/columnBuffer.ts';
import { Dialog } from '../ui/dialog.ts';
import { element } from '../ui/dom.ts';
import { differenceTable } from './differenceTable.ts';
import { Ghost } from './ghost.ts';
import { laidTrace } from './laidTrace.ts';
import { type FinishedMove, MoveLog } from './moveLog.ts';
import { counterpart, type PinnedRun, pinRun } from './pinnedRun.ts';
import { type TraceError, traceError } from './traceError.ts';

interface ComparisonOptions {
  readonly history: History;
  /** What is to be drawn beneath the present run; null: nothing. */
  onPinned(ghost: ColumnSource | null): void;
}

/** The present run beside a pinned one: laid over it in the charts, and in figures in a dialog. */
export class Comparison {
  readonly #options: ComparisonOptions;
  readonly #log = new MoveLog();
  readonly #tables = element('div', { class: 'dialog-scroll' });
  readonly #dialog = new Dialog({ title: 'Differences', class: 'wide' }).fill(this.#tables);
  #scene: Scene;
  #status: AxisStatus | null = null;
  #pinned: PinnedRun | null = null;
  #ghost: Ghost | null = null;
  /** Of the trace that is laid over the run; null where it has no setpoint. */
  #trace: TraceError | null = null;

  constructor(scene: Scene, options: ComparisonOptions) {
    this.#scene = scene;
    this.#options = options;
  }

  get isPinned(): boolean {
    return this.#ghost !== null;
  }

  /** The last move, if it was made with the present parameters from its start to its end. */
  get moveOfPresent(): MoveFigures | null {
    const last = this.#log.finished.at(-1);
    return last && this.#log.isOfPresent(last) ? last.figures : null;
  }

  /** Another set-up of the axis. */
  setScene(scene: Scene): void {
    this.#scene = scene;
    this.#log.changed(this.#status);
    this.#refresh();
  }

  take(run: number, status: AxisStatus): void {
    this.#status = status;
    if (!this.#log.take(run, status)) return;
    this.#ghost?.align(this.#log.moves);
    this.#refresh();
  }

  /** Pins the last cycle, or lets go of the pinned one. Returns what to say of it. */
  toggle(): string {
    if (this.#ghost) {
      this.#lay(null, null);
      return 'Unpinned.';
    }
    const pinned = pinRun(this.#options.history, this.#log, this.#scene);
    if (!pinned) return 'Nothing to pin yet: let a move finish first.';
    this.#lay(pinned, new Ghost(pinned));
    return `Pinned ${movesText(pinned.moves.map(({ index }) => index))}. Change something and compare.`;
  }

  open(): void {
    this.#fill();
    this.#dialog.open();
  }

  /** Lays a measured trace over the run, in place of a pinned one. */
  layTrace(trace: Trace): void {
    const laid = laidTrace(trace, this.#scene);
    this.#trace = traceError(trace, laid.from);
    this.#lay(null, new Ghost(laid));
  }

  #lay(pinned: PinnedRun | null, ghost: Ghost | null): void {
    this.#pinned = pinned;
    this.#ghost = ghost;
    this.#ghost?.align(this.#log.moves);
    this.#options.onPinned(this.#ghost);
  }

  #refresh(): void {
    if (this.#dialog.isOpen) this.#fill();
  }

  #fill(): void {
    const isTrace = this.#ghost !== null && this.#pinned === null;
    this.#dialog.title = `Differences from the ${isTrace ? 'measured trace' : 'pinned run'}`;
    const contents = this.#pinned
      ? this.#contents(this.#pinned)
      : isTrace
        ? this.#fromTrace()
        : [element('p', {}, NOT_PINNED)];
    this.#tables.replaceChildren(...contents);
  }

  #contents(pinned: PinnedRun): Node[] {
    const { parameters } = this.#scene;
    const differing = compareParameters(pinned.parameters, parameters);
    const columns = ['Pinned', 'Now'] as const;
    const settings =
      differing.length > 0
        ? differenceTable('Parameter', columns, differing)
        : element('p', {}, 'No parameter has changed.');
    return [this.#moves(pinned, columns), settings].flat();
  }

  #moves(pinned: PinnedRun, columns: readonly [string, string]): Node[] {
    const now = this.#log.finished.at(-1);
    if (!now) return [element('p', {}, NO_MOVE)];
    const before = counterpart(pinned, now) ?? at(pinned.moves, pinned.moves.length - 1);
    const elsewhere = pinned.title === this.#scene.title ? '' : ` of ${pinned.title}`;
    const text = `Pinned: move ${before.index + 1}${elsewhere}. ${this.#nowText(now)}`;
    const differences = compareMoves(before.figures, now.figures, this.#scene.parameters);
    return [element('p', {}, text), differenceTable('Figure', columns, differences)];
  }

  /** Of a trace no more is known than its series: where its moves end, and how it was set, it does not say. */
  #fromTrace(): Node[] {
    if (!this.#trace) return [element('p', {}, NO_SETPOINT)];
    const now = this.#log.finished.at(-1);
    if (!now) return [element('p', {}, NO_MOVE)];
    const span = ranged(this.#trace.seconds, 's');
    const text = `Trace: ${span} from its first motion to its end. ${this.#nowText(now)} Both include the dwell.`;
    const names = ['peakError', 'rmsError'] as const;
    const differences = compareFigures(names, this.#trace, now.figures, this.#scene.parameters);
    return [
      element('p', {}, text),
      differenceTable('Figure', ['Trace', 'Now'], differences),
      element('p', {}, ONLY_ERROR),
    ];
  }

  #nowText(now: FinishedMove): string {
    const mixed = this.#log.isOfPresent(now)
      ? ''
      : ' Something was changed during this move: wait for the next whole move.';
    return `Now: move ${now.index + 1} of ${this.#scene.title}.${mixed}`;
  }
}

const NOT_PINNED =
  'No run is pinned. “Pin run” keeps the last cycle with its figures and parameters, to compare with later ones.';

const NO_MOVE = 'No move of the present run has finished yet.';

const NO_SETPOINT =
  'The trace has no setpoint, so its following error is not known. Choose the column of the setpoint and show the trace over the charts again to compare figures.';

const ONLY_ERROR =
  'A trace does not tell where its moves end or how the drive was set: other figures and parameters are not compared.';

function movesText(indices: readonly number[]): string {
  const [first = 0, last = 0] = [indices[0], indices.at(-1)];
  return first === last ? `move ${first + 1}` : `moves ${first + 1} to ${last + 1}`;
}
