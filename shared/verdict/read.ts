import { at } from '../core/at.ts';
import type { Figure, FigureOf } from '../figures/figure.ts';
import type { Accuracy, PositioningTest, TestResult, TrippedTest } from '../protocol/accuracy.ts';
import type { HeatState, LapseSample } from '../protocol/timeLapse.ts';
import type { Job } from '../study/job.ts';
import { movesAsked } from '../study/jobMotion.ts';
import type { MoveOutcome } from '../study/outcome.ts';
import type { JudgedCandidate } from './judgement.ts';

/*
 * Where the figures of the comparison are read. What a tripped axis did before it tripped is no figure of the job: it has none.
 */

export function ended<T extends object>(result: TestResult<T>): T | null {
  return isTripped(result) ? null : result;
}

function isTripped<T extends object>(result: TestResult<T>): result is TrippedTest {
  return 'trip' in result;
}

export function movesOf({ outcome }: JudgedCandidate): MoveOutcome | null {
  return outcome.moves.trip === null ? outcome.moves : null;
}

/** The tests that are made once. */
type TestName = Exclude<keyof Accuracy, 'positioning'>;
type Ended<R> = Exclude<R, TrippedTest>;

export function testOf<K extends TestName>({ outcome }: JudgedCandidate, name: K): Ended<Accuracy[K]> | null {
  return ended(outcome.accuracy[name] as TestResult<object>) as Ended<Accuracy[K]> | null;
}

/** A figure of a test, read from a candidate; none where the drive tripped in it. */
export function testFigure<K extends TestName>(
  name: K,
  figure: FigureOf<Ended<Accuracy[K]>>,
): Figure & { readonly of: (candidate: JudgedCandidate) => number | null } {
  return {
    ...figure,
    of: (candidate) => {
      const test = testOf(candidate, name);
      return test === null ? null : figure.of(test);
    },
  };
}

/** The positioning test in the last of these states that it was made in. */
export function positioningIn(
  { outcome }: JudgedCandidate,
  ...states: readonly PositioningTest['state'][]
): PositioningTest | null {
  const tests = outcome.accuracy.positioning.map(ended);
  return tests.filter((test) => test !== null && states.includes(test.state)).at(-1) ?? null;
}

/** The day as it was run, when it came to its end. */
export function dayOf({ outcome }: JudgedCandidate): readonly LapseSample[] | null {
  const { trip, samples } = outcome.heat.asSet;
  return trip === null && samples.length > 0 ? samples : null;
}

export function dayEnd(candidate: JudgedCandidate): LapseSample | null {
  return dayOf(candidate)?.at(-1) ?? null;
}

export function longRun({ outcome }: JudgedCandidate): HeatState | null {
  return outcome.heat.asSet.trip === null ? outcome.heat.asSet.steady : null;
}

/** Largest magnitude over the day. */
export function largest(day: readonly LapseSample[] | null, of: (state: HeatState) => number): number | null {
  return day && Math.max(...day.map((sample) => Math.abs(of(sample))));
}

/** Electrical power in the mean of the day, windings as warm as they get, W. */
export function dayPower(candidate: JudgedCandidate): number | null {
  const day = dayOf(candidate);
  if (day === null) return null;
  const [first, last] = [at(day, 0), at(day, day.length - 1)];
  if (last.time === first.time) return last.electricPower;
  let energy = 0;
  for (let k = 1; k < day.length; k++) {
    const [before, now] = [at(day, k - 1), at(day, k)];
    energy += ((before.electricPower + now.electricPower) / 2) * (now.time - before.time);
  }
  return energy / (last.time - first.time);
}

/** The shortest standstill of the job, in which an axis has to settle, s; 0: none. */
export function shortestDwell(job: Job): number {
  return Math.min(...movesAsked(job).map(({ dwell }) => dwell));
}

/** The longest commanded motion of the job, s. */
export function longestMotion(candidate: JudgedCandidate, { values, moves }: Job): number | null {
  if (values.motion !== 'move list') return values.moveTime;
  const done = movesOf(candidate)?.moves;
  if (!done || moves.length === 0) return null;
  return Math.max(...done.map(({ duration, index }) => duration - at(moves, index % moves.length).dwell));
}
