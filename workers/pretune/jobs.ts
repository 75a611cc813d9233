import { rounded } from '../../shared/axis/loop/tunedValue.ts';
import { at } from '../../shared/core/at.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import type { ErrorCourse, RobustnessRun, TuningPoint } from '../../shared/protocol/pretune.ts';
import { errorCourse } from './errorCourse.ts';
import { type LoopDesign, LoopDesigner } from './loopDesign.ts';
import type { LoopLimit } from './loopLimit.ts';
import { searchLoops } from './loopSearch.ts';
import { feedforward, type MotionForce, measuredMotion } from './motion.ts';
import type { Outcome } from './ranking.ts';
import { currentBandwidth } from './rules/magnitudeOptimum.ts';
import { textbookTunings } from './rules/textbook.ts';
import { type Shape, shapeChanges } from './shape.ts';
import type { Structure } from './structure.ts';
import type { Task } from './task.ts';
import { tryOut, tryToBeat, tryTrimmed } from './tryOut.ts';
import { VARIATIONS } from './variations.ts';

/** A piece of work that any worker can do: it depends on nothing but its data. */
export type Job =
  /** The fastest loop of one structure within each limit. */
  | {
      readonly kind: 'search';
      readonly task: Task;
      readonly structure: Structure;
      readonly limits: readonly LoopLimit[];
      readonly trials: number;
    }
  /** A trial of a loop of this shape, as fast as the limit allows. */
  | {
      readonly kind: 'trial';
      readonly task: Task;
      readonly label: string;
      readonly shape: Shape;
      readonly limit: LoopLimit;
      readonly motion: MotionForce;
      /** Null: none, every loop counts. */
      readonly toBeat: Outcome | null;
    }
  /** A trial of a tuning with another feedforward, which has to beat the tuning as it is. */
  | {
      readonly kind: 'trim';
      readonly task: Task;
      readonly point: TuningPoint;
      readonly motion: MotionForce;
    }
  /** The force that moves the axis, measured with a tuning. */
  | { readonly kind: 'motion'; readonly task: Task; readonly changes: ParameterChanges }
  /** A trial of the best that textbook rules give within the limit. */
  | { readonly kind: 'textbook'; readonly task: Task; readonly limit: LoopLimit }
  /** The following error over a run of a tuning. */
  | { readonly kind: 'course'; readonly task: Task; readonly changes: ParameterChanges }
  /** A trial of the scene as it is. */
  | { readonly kind: 'as it is'; readonly task: Task }
  /** A trial of a tuning on one of the VARIATIONS. */
  | {
      readonly kind: 'variation';
      readonly task: Task;
      readonly changes: ParameterChanges;
      readonly index: number;
    };

interface Results {
  readonly search: readonly (LoopDesign | null)[];
  readonly trial: TuningPoint | null;
  readonly trim: TuningPoint | null;
  readonly motion: MotionForce;
  readonly course: ErrorCourse;
  readonly textbook: TuningPoint | null;
  readonly 'as it is': TuningPoint;
  readonly variation: RobustnessRun;
}

export type JobResult<J extends Job = Job> = Results[J['kind']];

/** Number of points of the responses: for a search, and for the final loop. */
export const SEARCH_POINTS = 160;
const FINAL_POINTS = 600;

export function doJob<J extends Job>(job: J): JobResult<J>;
export function doJob(job: Job): JobResult {
  const { task } = job;
  switch (job.kind) {
    case 'search':
      return searchLoops(
        new LoopDesigner(designed(task), SEARCH_POINTS),
        job.structure,
        job.limits,
        job.trials,
      );
    case 'trial':
      return trial(job);
    case 'trim':
      return trimmed(task, job.point, job.motion);
    case 'motion':
      return measuredMotion(task, job.changes);
    case 'course':
      return errorCourse(task, job.changes);
    case 'textbook':
      return bestTextbook(task, job.limit);
    case 'as it is':
      return tryOut(task, {}, 'as it is', 'as it is');
    case 'variation':
      return variation(task, job.changes, job.index);
  }
}

/** The machine with its current loop by the magnitude optimum. */
export function designed({ scene: { parameters: p } }: Task): Parameters {
  return { ...p, currentBandwidth: rounded('currentBandwidth', currentBandwidth(p.currentRate)) };
}

/** A design as parameters. */
export function designChanges(
  task: Task,
  { shape, gains }: LoopDesign,
  motion: MotionForce,
): ParameterChanges {
  const p = designed(task);
  const loop = {
    currentBandwidth: p.currentBandwidth,
    ...gains,
    ...shapeChanges(p, shape),
  };
  return { ...loop, ...feedforward({ ...p, ...loop }, motion) };
}

function bestTextbook(task: Task, limit: LoopLimit): TuningPoint | null {
  let best: TuningPoint | null = null;
  for (const { name, changes } of textbookTunings(task.scene.parameters, limit))
    best = best
      ? (tryToBeat(task, best, changes, 'textbook', name) ?? best)
      : tryOut(task, changes, 'textbook', name);
  return best;
}

function trial({
  task,
  label,
  shape,
  limit,
  motion,
  toBeat,
}: Extract<Job, { kind: 'trial' }>): TuningPoint | null {
  // The speed estimate acts in the current loop too, so the axis must be the one with this filter.
  const p = { ...designed(task), derivativeTime: rounded('derivativeTime', shape.derivativeTime) };
  const design = designerOf(p).fastest(shape, limit);
  if (design === null) return null;
  const changes = designChanges(task, design, motion);
  return toBeat
    ? tryToBeat(task, toBeat, changes, 'pretuned', label)
    : tryOut(task, changes, 'pretuned', label);
}

/** Designers of the machines met last, by their parameters: shapes around a shape mostly have the same speed filter. */
const designers = new Map<string, LoopDesigner>();
const DESIGNERS_KEPT = 4;

function designerOf(p: Parameters): LoopDesigner {
  const key = JSON.stringify(p);
  const designer = designers.get(key) ?? new LoopDesigner(p, FINAL_POINTS);
  designers.delete(key);
  designers.set(key, designer);
  for (const oldest of designers.keys()) if (designers.size > DESIGNERS_KEPT) designers.delete(oldest);
  return designer;
}

function trimmed(task: Task, point: TuningPoint, motion: MotionForce): TuningPoint | null {
  const p = { ...task.scene.parameters, ...point.changes };
  return tryTrimmed(task, point, { ...point.changes, ...feedforward(p, motion) });
}

function variation(task: Task, changes: ParameterChanges, index: number): RobustnessRun {
  const { name, changes: vary } = at(VARIATIONS, index);
  const { scene } = task;
  const parameters = { ...scene.parameters, ...vary(scene.parameters) };
  const point = tryOut({ ...task, scene: { ...scene, parameters } }, changes, 'pretuned', name);
  const { peakSensitivity, settlingTime, rmsError, rmsCurrent, trip } = point;
  return { variation: name, peakSensitivity, settlingTime, rmsError, rmsCurrent, trip };
}
