import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_COUNT, CHANNEL_INDEX, type ChannelName } from '../../shared/core/channels.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { Trace } from '../../shared/protocol/trace.ts';
import { History } from '../history/history.ts';
import type { Laid } from './ghost.ts';
import { movesPerCycle } from './pinnedRun.ts';

/** A measured motion has begun when it has covered this share of the whole travel: more than noise. A setpoint has none. */
const BEGUN = 1e-4;

/** A measured trace, to be laid over the run of `scene` with its first motion where a cycle of the run begins. */
export function laidTrace(trace: Trace, scene: Scene): Laid {
  const { start, period, position } = trace;
  const history = new History();
  history.ingest({ run: 0, bins: binsOf(trace), count: position.length });
  const from = start + (trace.setpoint ? beginning(trace.setpoint, 0) : beginning(position, BEGUN)) * period;
  const to = start + position.length * period;
  return { history: history.excerpt(from, to), from, to, firstMove: 0, movesPerCycle: movesPerCycle(scene) };
}

/** Index of the last sample at rest before the first motion. */
function beginning(series: Float64Array, begun: number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of series) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const [first = Number.NaN] = series;
  const moved = series.findIndex((value) => Math.abs(value - first) > begun * (high - low));
  return Math.max(moved - 1, 0);
}

/** The trace as records of the recorder; what was not measured is no number, and draws nothing. */
function binsOf(trace: Trace): Float64Array<ArrayBuffer> {
  const { start, period, position, setpoint } = trace;
  const series: Partial<Record<ChannelName, Float64Array | null | undefined>> = {
    time: position.map((_, k) => start + k * period),
    encoderPosition: position,
    tablePosition: trace.tablePosition ?? position,
    setpoint,
    followingError: setpoint?.map((value, k) => value - valueAt(position, k)),
    motorPosition: trace.motorPosition,
    forceCurrent: trace.current,
    currentCommand: trace.currentCommand,
  };
  const stride = 2 * CHANNEL_COUNT;
  const bins = new Float64Array(position.length * stride).fill(Number.NaN);
  for (const [name, values] of Object.entries(series)) {
    const column = 2 * CHANNEL_INDEX[name as ChannelName];
    for (const [k, value] of values?.entries() ?? []) {
      bins[k * stride + column] = value;
      bins[k * stride + column + 1] = value;
    }
  }
  return bins;
}
