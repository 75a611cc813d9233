import type { LoopFigures } from '../../shared/analysis.ts';
import { CHANNEL_INDEX as C } from '../../shared/channels.ts';
import type { ParameterChanges, Parameters } from '../../shared/parameters/table.ts';
import type { TuningPoint } from '../../shared/pretune.ts';
import { analyse } from '../analysis/analyse.ts';
import { measureRun } from '../run/measureRun.ts';
import { Tally } from '../run/tally.ts';
import { designPoints } from './plantResponse.ts';
import type { Task } from './task.ts';

/** Runs a task with changed parameters and analyses its loop: nothing of the result is estimated. */
export function tryOut(
  task: Task,
  changes: ParameterChanges,
  origin: TuningPoint['origin'],
  label: string,
): TuningPoint {
  const parameters = { ...task.scene.parameters, ...changes };
  const error = new Tally();
  const summary = measureRun({ ...task.scene, parameters }, task.seconds, (record) => {
    if (record[C.time]! >= task.from) error.add(record[C.followingError]!);
  });
  return {
    origin,
    label,
    changes,
    ...soundness(parameters),
    settlingTime: task.figure === 'settling time' && !summary.trip ? summary.settlingTime : null,
    rmsError: error.rms,
    peakError: error.peak,
    rmsCurrent: summary.rmsCurrent,
    trip: summary.trip,
  };
}

type Soundness = Pick<TuningPoint, 'peakSensitivity' | 'phaseMargin' | 'gainMargin' | 'crossover'>;

/** How far a loop is from instability: the worse of standing and sliding. Peak sensitivity is infinite when it is unstable in either. */
export function soundness(p: Parameters): Soundness {
  const { standing, sliding } = designPoints(p);
  const both = [analyse(p, standing).figures, analyse(p, sliding).figures] as const;
  const least = (of: (figures: LoopFigures) => number | undefined) => {
    const values = both.map(of).filter((value) => value !== undefined);
    return values.length > 0 ? Math.min(...values) : null;
  };
  return {
    peakSensitivity: both.every(({ stable }) => stable)
      ? 1 / Math.min(...both.map(({ modulusMargin }) => modulusMargin.value))
      : Number.POSITIVE_INFINITY,
    phaseMargin: least(({ phaseMargin }) => phaseMargin?.value),
    gainMargin: least(({ gainMargin }) => gainMargin?.value),
    crossover: both[1].crossovers[0] ?? null,
  };
}
