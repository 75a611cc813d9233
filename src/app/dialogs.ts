import { PRESETS } from '../../scenes/index.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { MeasuredLoop } from '../../shared/protocol/analysis.ts';
import type { AxisStatus } from '../../shared/protocol/axis.ts';
import type { ToleranceStudy } from '../../shared/tolerance/toleranceStudy.ts';
import { askedOf, presentScene } from '../bench/bench.ts';
import type { BenchActions } from '../bench/benchActions.ts';
import { basedOn } from '../bench/presets.ts';
import type { Store } from '../bench/store.ts';
import type { AnalysisClient } from '../clients/analysisClient.ts';
import type { Comparison } from '../compare/comparison.ts';
import { FiguresDialog } from '../compare/figuresDialog.ts';
import type { ToleranceDialog } from '../tolerance/toleranceDialog.ts';
import type { PretuneDialog } from '../tuning/pretune/pretuneDialog.ts';
import type { ResponseDialog } from '../tuning/response/responseDialog.ts';
import type { TraceDialog } from '../tuning/trace/traceDialog.ts';
import type { WearDialog } from '../tuning/wear/wearDialog.ts';
import type { Messages } from '../ui/messages.ts';
import { createCautions } from './cautionsDialog.ts';
import type { Keeper } from './kept/keeper.ts';
import type { SmallDialogs } from './smallDialogs/smallDialogs.ts';

interface DialogsOptions {
  readonly store: Store;
  readonly bench: BenchActions;
  readonly messages: Messages;
  readonly analysis: AnalysisClient;
  readonly comparison: Comparison;
  /** There by the time a dialog opens. */
  readonly keeper: () => Keeper;
  status(): AxisStatus | null;
  /** Another scene on the bench, as one step of undo. */
  openOnBench(scene: Scene, text: string): void;
}

/** What opens over the bench. Most of it is fetched when it is first asked for: the page opens sooner without it. */
export class Dialogs {
  readonly figures = new FiguresDialog();
  readonly cautions = createCautions();
  readonly #options: DialogsOptions;
  #small: SmallDialogs | null = null;
  #pretune: PretuneDialog | null = null;
  #tolerance: ToleranceDialog | null = null;
  #trace: TraceDialog | null = null;
  #response: ResponseDialog | null = null;
  #wear: WearDialog | null = null;

  constructor(options: DialogsOptions) {
    this.#options = options;
  }

  /** Opens one of the smaller ones. */
  async openSmall(open: (dialogs: SmallDialogs) => unknown): Promise<void> {
    const { SmallDialogs } = await import('./smallDialogs/smallDialogs.ts');
    this.#small ??= new SmallDialogs(this.#options);
    await open(this.#small);
  }

  async openPretune(): Promise<void> {
    const { PretuneDialog } = await import('../tuning/pretune/pretuneDialog.ts');
    const { store, bench } = this.#options;
    this.#pretune ??= new PretuneDialog({
      scene: () => presentScene(store.bench),
      use: (goal, changes, text) => bench.usePretuned(goal, changes, text),
    });
    this.#pretune.open();
  }

  /** With a study from a file, or what suits the scene on the bench. */
  async openTolerance(study?: ToleranceStudy): Promise<void> {
    const { ToleranceDialog } = await import('../tolerance/toleranceDialog.ts');
    const { store, openOnBench } = this.#options;
    this.#tolerance ??= new ToleranceDialog({ scene: () => presentScene(store.bench), openOnBench });
    if (study) this.#tolerance.openStudy(study);
    else this.#tolerance.open();
  }

  async openWearTest(): Promise<void> {
    const { WearDialog } = await import('../tuning/wear/wearDialog.ts');
    this.#wear ??= new WearDialog();
    this.#wear.open(presentScene(this.#options.store.bench));
  }

  async openTrace(): Promise<void> {
    const { TraceDialog } = await import('../tuning/trace/traceDialog.ts');
    const { store, bench, comparison } = this.#options;
    this.#trace ??= new TraceDialog({
      parameters: () => store.bench.parameters,
      lay: (trace) => comparison.layTrace(trace),
      use: (changes, text) => bench.shape(changes, text, null),
    });
    this.#trace.open();
  }

  async openResponse(lay: (loop: MeasuredLoop) => void): Promise<void> {
    const { ResponseDialog } = await import('../tuning/response/responseDialog.ts');
    const { store, bench, analysis } = this.#options;
    this.#response ??= new ResponseDialog({
      analysis,
      lay,
      parameters: () => store.bench.parameters,
      use: (changes, text) => bench.shape(changes, text, null),
    });
    this.#response.open();
  }

  async openGainSheet(): Promise<void> {
    const { showGainSheet } = await import('./showGainSheet.ts');
    const { store, comparison, analysis, messages } = this.#options;
    const scene = presentScene(store.bench);
    const status = this.#options.status();
    const run = {
      move: comparison.moveOfPresent,
      notices: status?.notices ?? [],
      trip: status?.trip ?? null,
      asked: askedOf(store.bench),
      drive: basedOn(scene, PRESETS)?.summary ?? null,
    };
    await showGainSheet(scene, run, analysis, messages);
  }
}
