import { wrap } from 'comlink';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { FitCommands, FitOptions, FitResult } from '../../shared/protocol/fit.ts';
import type { Trace } from '../../shared/protocol/trace.ts';

/** Fits the axis to a trace, in a worker of its own that ends with the fit. */
export async function fitInWorker(
  trace: Trace,
  parameters: Parameters,
  options: FitOptions,
): Promise<FitResult> {
  const worker = new Worker(new URL('../../workers/entry/fitWorker.ts', import.meta.url), { type: 'module' });
  try {
    return await wrap<FitCommands>(worker).fit(trace, parameters, options);
  } finally {
    worker.terminate();
  }
}
