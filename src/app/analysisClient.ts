import { type Remote, wrap } from 'comlink';
import type { AnalysisCommands, LoopAnalysis, OperatingPoint } from '../../shared/analysis.ts';
import type { Parameters } from '../../shared/parameters/table.ts';

/** The loop analysis as the page sees it. Its worker starts with the first question. */
export class AnalysisClient {
  #commands: Remote<AnalysisCommands> | null = null;

  analyse(parameters: Parameters, point: OperatingPoint): Promise<LoopAnalysis> {
    this.#commands ??= start();
    return this.#commands.analyse(parameters, point);
  }
}

function start(): Remote<AnalysisCommands> {
  const worker = new Worker(new URL('../../workers/entry/analysisWorker.ts', import.meta.url), {
    type: 'module',
  });
  return wrap<AnalysisCommands>(worker);
}
