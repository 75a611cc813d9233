import { valueAt } from '../../shared/core/at.ts';
import type { Trace } from '../../shared/protocol/trace.ts';

/** The following error that a trace holds, m, over so many s of it. */
export interface TraceError {
  readonly peakError: number;
  readonly rmsError: number;
  readonly seconds: number;
}

/** From a time of the trace (s) to its end, gaps left out; null where it has no setpoint. */
export function traceError({ setpoint, position, period, start }: Trace, from: number): TraceError | null {
  if (!setpoint) return null;
  let [peak, squares, count] = [0, 0, 0];
  for (let k = Math.round((from - start) / period); k < position.length; k++) {
    const error = valueAt(setpoint, k) - valueAt(position, k);
    if (Number.isNaN(error)) continue;
    peak = Math.max(peak, Math.abs(error));
    squares += error ** 2;
    count++;
  }
  return { peakError: peak, rmsError: Math.sqrt(squares / count), seconds: count * period };
}
