import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { ErrorCourse } from '../../shared/protocol/pretune.ts';
import { measureTrial } from '../run/measureRun.ts';
import type { Task } from './task.ts';

/** Stretches of a run that are shown, each by its lowest and its highest error. */
const STRETCHES = 500;

/** The following error of a tuning over the run of a task. */
export function errorCourse({ scene, seconds }: Task, changes: ParameterChanges): ErrorCourse {
  const time: number[] = [];
  const error: number[] = [];
  measureTrial({ ...scene, parameters: { ...scene.parameters, ...changes } }, seconds, (record) => {
    time.push(valueAt(record, C.time));
    error.push(valueAt(record, C.followingError));
  });
  const length = Math.max(1, Math.ceil(time.length / STRETCHES));
  const kept: number[] = [];
  for (let from = 0; from < time.length; from += length) {
    const stretch = error.slice(from, from + length);
    const low = from + stretch.indexOf(Math.min(...stretch));
    const high = from + stretch.indexOf(Math.max(...stretch));
    kept.push(...(low === high ? [low] : low < high ? [low, high] : [high, low]));
  }
  const pick = (values: readonly number[]) => Float64Array.from(kept, (k) => values[k] ?? Number.NaN);
  return { time: pick(time), error: pick(error) };
}
