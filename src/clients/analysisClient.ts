import { proxy } from 'comlink';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type {
  AnalysisCommands,
  LoopAnalysis,
  LoopExperiment,
  MeasuredLoop,
  MeasurementCommands,
  OperatingPoint,
} from '../../shared/protocol/analysis.ts';
import type { MeasuredResponse, ResponseCommands, TakenResponse } from '../../shared/protocol/response.ts';
import { WorkerHost } from './workerHost.ts';

/**
 * The loop analysis as the page sees it. A measurement takes seconds and gets a worker of its own, so that analysing goes on
 * meanwhile and cancelling is immediate.
 */
export class AnalysisClient {
  readonly #analysis = new WorkerHost<AnalysisCommands>('The analysis', spawnAnalysis);
  readonly #measurement = new WorkerHost<MeasurementCommands>('The measurement', spawnMeasurement);
  readonly #response = new WorkerHost<ResponseCommands>('The analysis', spawnMeasurement);

  analyse(parameters: Parameters, point: OperatingPoint): Promise<LoopAnalysis> {
    return this.#analysis.ask((commands) => commands.analyse(parameters, point));
  }

  /** Null when it was cancelled. Another measurement under way is cancelled first. */
  measure(experiment: LoopExperiment, onProgress: (share: number) => void): Promise<MeasuredLoop | null> {
    return this.#measurement.runJob((commands, during) =>
      commands.measure(experiment, proxy(during(onProgress))),
    );
  }

  takeResponse(parameters: Parameters, response: MeasuredResponse): Promise<TakenResponse> {
    return this.#response.ask((commands) => commands.takeResponse(parameters, response));
  }

  cancelMeasuring(): void {
    this.#measurement.end();
  }
}

function spawnAnalysis(): Worker {
  return new Worker(new URL('../../workers/entry/analysisWorker.ts', import.meta.url), { type: 'module' });
}

function spawnMeasurement(): Worker {
  return new Worker(new URL('../../workers/entry/measurementWorker.ts', import.meta.url), { type: 'module' });
}
