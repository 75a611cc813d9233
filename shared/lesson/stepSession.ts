import { at } from '../core/at.ts';
import type { AxisEvent, TuningSession } from '../protocol/axis.ts';
import type { HandPoint, LessonStep, StepRun } from './lesson.ts';

/** Time between two places of a hand that moves, s. */
const HAND_PERIOD = 0.005;

/** The run of a step as a session that can be replayed, on the page and without one. */
export function stepSession({ scene }: Pick<LessonStep, 'scene'>, run: StepRun): TuningSession {
  const { currentRate } = scene.parameters;
  const tickAt = (time: number) => Math.round(time * currentRate);
  const events: AxisEvent[] = [
    ...handPath(run.hand).map(({ time, to }) => ({
      tick: tickAt(time),
      kind: 'hand' as const,
      position: to,
    })),
    ...run.changes.map(({ time, parameters }) => ({
      tick: tickAt(time),
      kind: 'change' as const,
      changes: parameters,
    })),
  ];
  return { scene, events: events.sort((a, b) => a.tick - b.tick), ticks: tickAt(run.seconds) };
}

/** The points of a hand, and the places between them. */
function handPath(points: readonly HandPoint[]): HandPoint[] {
  return points.flatMap((point, index) => {
    if (index === 0) return [point];
    const before = at(points, index - 1);
    if (before.to === null || point.to === null) return [point];
    const [from, way] = [before.to, point.to - before.to];
    const duration = point.time - before.time;
    const count = Math.max(1, Math.ceil(duration / HAND_PERIOD));
    return Array.from({ length: count }, (_, k) => ({
      time: before.time + ((k + 1) / count) * duration,
      to: from + ((k + 1) / count) * way,
    }));
  });
}
