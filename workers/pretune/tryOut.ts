import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import type { TuningPoint } from '../../shared/protocol/pretune.ts';
import { loopMargins } from '../analysis/analyse.ts';
import { measureTrial } from '../run/measureRun.ts';
import { Tally } from '../run/tally.ts';
import { designPoints } from './plantResponse.ts';
import { canBeat, type Outcome } from './ranking.ts';
import type { Task } from './task.ts';

/**
 * Runs a task with changed parameters and analyses its loop: nothing of the result is estimated.
 */
export function tryOut(
  task: Task,
  changes: ParameterChanges,
  origin: TuningPoint['origin'],
  label: string,
): TuningPoint {
  const found = soundness({ ...task.scene.parameters, ...changes });
  return { origin, label, changes, ...found, ...tryRun(task, changes) };
}

/** The same, but null, and over as soon as that is certain, when the run does not come before another outcome. */
export function tryToBeat(
  task: Task,
  toBeat: Outcome,
  changes: ParameterChanges,
  origin: TuningPoint['origin'],
  label: string,
): TuningPoint | null {
  const run = tryRunToBeat(task, toBeat, changes);
  return run && { origin, label, changes, ...soundness({ ...task.scene.parameters, ...changes }), ...run };
}

/**
 * A tuning with another feedforward, which lies outside the loop, so the loop is as sound as it was. Null when it does not come
 * before the tuning as it was.
 */
export function tryTrimmed(task: Task, before: TuningPoint, changes: ParameterChanges): TuningPoint | null {
  const run = tryRunToBeat(task, before, changes);
  return run && { ...before, changes, ...run };
}

type Run = Omit<TuningPoint, 'origin' | 'label' | 'changes' | keyof Soundness>;

function tryRunToBeat(task: Task, toBeat: Outcome, changes: ParameterChanges): Run | null {
  const { currentRate, positionDivider } = task.scene.parameters;
  const samples = ((task.seconds - task.from) * currentRate) / positionDivider + 1;
  let lost = false;
  const run = tryRun(task, changes, (settlingTime, error) => {
    const least = { settlingTime, rmsError: error.rms * Math.sqrt(error.count / samples) };
    lost = !canBeat(task, least, toBeat);
    return !lost;
  });
  return lost ? null : run;
}

function tryRun(
  task: Task,
  changes: ParameterChanges,
  goesOn: (minSettlingTime: number, error: Tally) => boolean = () => true,
): Run {
  const parameters = { ...task.scene.parameters, ...changes };
  const error = new Tally();
  const summary = measureTrial(
    { ...task.scene, parameters },
    task.seconds,
    (record) => {
      if (valueAt(record, C.time) >= task.from) error.add(valueAt(record, C.followingError));
    },
    (minSettlingTime) => goesOn(minSettlingTime, error),
  );
  return {
    settlingTime: task.figure === 'settling time' && !summary.trip ? summary.settlingTime : null,
    rmsError: error.rms,
    peakError: error.peak,
    rmsCurrent: summary.rmsCurrent,
    peakCurrent: summary.peakCurrent,
    rmsForce: summary.rmsForce,
    trip: summary.trip,
  };
}

type Soundness = Pick<TuningPoint, 'peakSensitivity' | 'phaseMargin' | 'gainMargin' | 'crossover'>;

/**
 * Distance of a loop from instability: the worse of standing and sliding. Peak sensitivity is
 * infinite when the loop is unstable in either.
 */
export function soundness(p: Parameters): Soundness {
  const { standing, sliding } = designPoints(p);
  const both = [loopMargins(p, standing), loopMargins(p, sliding)] as const;
  const min = (of: (loop: (typeof both)[number]) => number | undefined) => {
    const values = both.map(of).filter((value) => value !== undefined);
    return values.length > 0 ? Math.min(...values) : null;
  };
  return {
    peakSensitivity: both.every(({ stable }) => stable)
      ? 1 / Math.min(...both.map(({ modulusMargin }) => modulusMargin.value))
      : Number.POSITIVE_INFINITY,
    phaseMargin: min(({ phaseMargin }) => phaseMargin?.value),
    gainMargin: min(({ gainMargin }) => gainMargin?.value),
    crossover: both[1].crossover,
  };
}
