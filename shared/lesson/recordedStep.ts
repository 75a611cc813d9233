import { at } from '../core/at.ts';
import type { TuningSession } from '../protocol/axis.ts';
import {
  type HandPoint,
  type LessonStep,
  LONGEST_RUN,
  MAX_EVENTS,
  type StepView,
  type TimedChange,
} from './lesson.ts';

/** What was done on the bench, as it was recorded. */
export interface Recording {
  readonly session: TuningSession;
  readonly view: StepView;
  /** Simulated seconds per second. */
  readonly pace: number;
}

/** A step of a lesson from what was done on the bench; what is said and asked in it is still to be written. */
export function recordedStep({ session, view, pace }: Recording, title: string): LessonStep {
  const { scene, events, ticks } = session;
  const seconds = Math.min(ticks / scene.parameters.currentRate, LONGEST_RUN);
  const timeOf = (tick: number) => Math.min(tick / scene.parameters.currentRate, seconds);
  const hand: HandPoint[] = [];
  const changes: TimedChange[] = [];
  for (const event of events) {
    const time = timeOf(event.tick);
    if (event.kind === 'hand') hand.push({ time, to: event.position });
    if (event.kind === 'change') changes.push({ time, parameters: event.changes });
  }
  const run = seconds > 0 ? { seconds, pace, hand: fewerPoints(hand), changes: fewerChanges(changes) } : null;
  return {
    title,
    text: '',
    notes: '',
    scene,
    view,
    pointAt: [],
    question: null,
    run,
    measures: [],
    answer: { text: '', claims: [], notShown: '' },
  };
}

/**
 * The path of a hand with no more points than a step may have. Between two points the hand moves on a straight line, so of a mouse
 * that was read many times a second only the corners are needed: the point that is nearest to the line between its neighbours goes
 * first. Where the hand takes hold and lets go is kept.
 */
function fewerPoints(points: readonly HandPoint[]): HandPoint[] {
  const left = [...points];
  const STRAIGHT = 1e-5;
  for (;;) {
    let [least, index] = [Number.POSITIVE_INFINITY, -1];
    for (let k = 1; k < left.length - 1; k++) {
      const offLine = distance(at(left, k - 1), at(left, k), at(left, k + 1));
      if (offLine < least) [least, index] = [offLine, k];
    }
    if (index < 0 || (left.length <= MAX_EVENTS && least > STRAIGHT)) return left.slice(0, MAX_EVENTS);
    left.splice(index, 1);
  }
}

/** How far the hand would be off, m, if it went straight from `before` to `after`. */
function distance(before: HandPoint, point: HandPoint, after: HandPoint): number {
  if (before.to === null || point.to === null || after.to === null) return Number.POSITIVE_INFINITY;
  const span = after.time - before.time;
  const share = span > 0 ? (point.time - before.time) / span : 0;
  return Math.abs(point.to - before.to - share * (after.to - before.to));
}

/** A slider that is dragged leaves many changes; those of one moment become one, and a longer moment until they fit. */
function fewerChanges(changes: readonly TimedChange[]): TimedChange[] {
  for (let moment = 0.02; ; moment *= 2) {
    const joined: TimedChange[] = [];
    for (const { time, parameters } of changes) {
      const last = joined.at(-1);
      if (last && time - last.time < moment)
        joined[joined.length - 1] = { time: last.time, parameters: { ...last.parameters, ...parameters } };
      else joined.push({ time, parameters });
    }
    if (joined.length <= MAX_EVENTS) return joined;
  }
}
