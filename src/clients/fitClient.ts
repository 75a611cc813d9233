import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { FitCommands, FitOptions, FitResult } from '../../shared/protocol/fit.ts';
import type { Trace } from '../../shared/protocol/trace.ts';
import { WorkerHost } from './workerHost.ts';

/** The fit of the axis to a trace as the page sees it, in a worker that ends with it. */
export class FitClient {
  readonly #fit = new WorkerHost<FitCommands>('The fit', spawn);

  /**
   * Null when it was cancelled. One fit at a time.
   * @throws WorkerFailure
   */
  fit(trace: Trace, parameters: Parameters, options: FitOptions): Promise<FitResult | null> {
    return this.#fit.runJob((commands) => commands.fit(trace, parameters, options));
  }

  cancel(): void {
    this.#fit.end();
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/fitWorker.ts', import.meta.url), { type: 'module' });
}
