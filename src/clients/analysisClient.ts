import { proxy, type Remote, wrap } from 'comlink';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type {
  AnalysisCommands,
  LoopAnalysis,
  LoopExperiment,
  MeasuredLoop,
  OperatingPoint,
} from '../../shared/protocol/analysis.ts';
import { workerFailure } from './workerFailure.ts';

/** A worker and the commands it takes. */
interface Analyst {
  readonly worker: Worker;
  readonly commands: Remote<AnalysisCommands>;
  readonly broken: Promise<never>;
}

/**
 * The loop analysis as the page sees it. A measurement takes seconds and gets a worker of its own, so that analysing goes on meanwhile and
 * cancelling is at once.
 */
export class AnalysisClient {
  #analyst: Analyst | null = null;
  #measuring: { readonly worker: Worker; readonly cancel: () => void } | null = null;

  async analyse(parameters: Parameters, point: OperatingPoint): Promise<LoopAnalysis> {
    this.#analyst ??= spawn();
    const { commands, broken } = this.#analyst;
    return Promise.race([commands.analyse(parameters, point), broken]);
  }

  /** Null when it was cancelled. Another measurement under way is cancelled first. */
  async measure(
    experiment: LoopExperiment,
    onProgress: (share: number) => void,
  ): Promise<MeasuredLoop | null> {
    this.cancelMeasuring();
    const { worker, commands, broken } = spawn();
    const cancelled = new Promise<null>((resolve) => {
      this.#measuring = { worker, cancel: () => resolve(null) };
    });
    try {
      return await Promise.race([commands.measure(experiment, proxy(onProgress)), cancelled, broken]);
    } finally {
      worker.terminate();
      if (this.#measuring?.worker === worker) this.#measuring = null;
    }
  }

  cancelMeasuring(): void {
    this.#measuring?.cancel();
    this.#measuring = null;
  }
}

function spawn(): Analyst {
  const worker = new Worker(new URL('../../workers/entry/analysisWorker.ts', import.meta.url), {
    type: 'module',
  });
  const broken = workerFailure(worker, 'The analysis');
  return { worker, commands: wrap<AnalysisCommands>(worker), broken };
}
