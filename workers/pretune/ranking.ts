import type { PretuneGoal, RobustnessRun, TuningPoint } from '../../shared/protocol/pretune.ts';
import type { Task } from './task.ts';

/** Negative when the first comes before the second. */
type Order<T> = (a: T, b: T) => number;

export type Outcome = Pick<TuningPoint, 'settlingTime' | 'rmsError' | 'trip'>;

/** Settling times that differ by less than this many position-loop samples count as equal. */
const EQUAL_SAMPLES = 1.5;

/** What decides between runs, alone. */
export function outcomeOf({ settlingTime, rmsError, trip }: Outcome): Outcome {
  return { settlingTime, rmsError, trip };
}

/** Whether the table is inside its window when the command ends, so that no feedforward could settle it sooner. */
export function isAtOnce(task: Task, outcome: Outcome): boolean {
  return compareSettling(task, settling(task, outcome), 0) === 0;
}

/** Better first: no trip, then the figure of the task, then the RMS following error. */
export function byOutcome(task: Task): Order<Outcome> {
  return (a, b) =>
    Number(a.trip !== null) - Number(b.trip !== null) ||
    compareSettling(task, settling(task, a), settling(task, b)) ||
    a.rmsError - b.rmsError;
}

/**
 * Whether a run that is under way can still come before an outcome.
 *
 * @param least settling time and RMS following error that the whole run has at least
 */
export function canBeat(task: Task, least: Omit<Outcome, 'trip'>, outcome: Outcome): boolean {
  return outcome.trip !== null || byOutcome(task)({ ...least, trip: null }, outcome) < 0;
}

/** A tuning with its results on the machine of the datasheet and on every variation of it. */
export interface Proven {
  readonly point: TuningPoint;
  readonly robustness: readonly RobustnessRun[];
}

/**
 * Better first: fewest variations that fail, then the figure of the task on the machine of the
 * datasheet, then in the worst case. Where all moves settle equally fast, a goal of settling
 * prefers the loop with the lowest peak sensitivity, the others the smallest following error.
 * One more variation never improves a place, so whoever is behind on some of them stays behind.
 */
export function byProof(task: Task, goal: PretuneGoal): Order<Proven> {
  const outcomes = ({ point, robustness }: Proven): readonly Outcome[] => [point, ...robustness];
  const failures = (proven: Proven) =>
    outcomes(proven).filter((run) => run.trip !== null || settling(task, run) === Number.POSITIVE_INFINITY)
      .length;
  const slowest = (proven: Proven) =>
    Math.max(
      ...outcomes(proven)
        .map((run) => settling(task, run))
        .filter(Number.isFinite),
    );
  const farthest = (proven: Proven) => Math.max(...outcomes(proven).map(({ rmsError }) => rmsError));
  return (a, b) =>
    failures(a) - failures(b) ||
    compareSettling(task, settling(task, a.point), settling(task, b.point)) ||
    compareSettling(task, slowest(a), slowest(b)) ||
    (goal.kind === 'settling' ? a.point.peakSensitivity - b.point.peakSensitivity : 0) ||
    farthest(a) - farthest(b);
}

/** Settling time, s; Infinity when a move did not settle, 0 where settling does not count. */
function settling({ figure }: Task, { settlingTime }: Outcome): number {
  return figure === 'settling time' ? (settlingTime ?? Number.POSITIVE_INFINITY) : 0;
}

function compareSettling({ scene }: Task, a: number, b: number): number {
  const { positionDivider, currentRate } = scene.parameters;
  return a === b || Math.abs(a - b) < (EQUAL_SAMPLES * positionDivider) / currentRate ? 0 : a - b;
}
