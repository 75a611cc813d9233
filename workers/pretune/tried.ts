import type { TuningPoint } from '../../shared/protocol/pretune.ts';
import type { LoopDesign } from './loopDesign.ts';
import type { LoopLimit } from './loopLimit.ts';
import type { MotionForce } from './motion.ts';
import { NEIGHBOURS, neighboursOf, TRIMS } from './neighbours.ts';
import { byOutcome, type Outcome } from './ranking.ts';
import type { Shape } from './shape.ts';
import type { Structure } from './structure.ts';
import type { Task } from './task.ts';
import type { Work } from './work.ts';

/** What is tried for one limit. */
export interface Trials {
  /** Rounds of simulated runs around the best loop. */
  readonly rounds: number;
  /** Number of loops whose feedforward is trimmed: those that follow best. */
  readonly trimmed: number;
}

/** The designs for one limit. */
export interface AtLimit {
  readonly limit: LoopLimit;
  /** The loop with the largest integral gain of each structure; null where none keeps the limit. */
  readonly designs: readonly { readonly structure: Structure; readonly design: LoopDesign | null }[];
  readonly textbook: TuningPoint | null;
}

/** A shape that was tried out, with the result. */
export interface Tried {
  readonly atLimit: AtLimit;
  readonly structure: Structure;
  readonly shape: Shape;
  readonly motion: MotionForce;
  readonly point: TuningPoint;
}

/** Largest number of simulated runs for one limit. */
export function trialsOf(task: Task, structures: number, trials: Trials): number {
  return structures + trimsOf(task, trials) + trials.rounds * NEIGHBOURS;
}

/** Simulated runs that trim the feedforward; it has no effect on a task without acceleration. */
function trimsOf({ figure }: Task, { trimmed }: Trials): number {
  return figure === 'settling time' ? trimmed * TRIMS.length : 0;
}

/**
 * Tries out the designs of one limit in simulated runs, and then shapes around the best of them.
 * Best first.
 */
export async function tryLoops(
  work: Work,
  task: Task,
  atLimit: AtLimit,
  motion: MotionForce,
  trials: Trials,
): Promise<Tried[]> {
  const { rounds, trimmed } = trials;
  const order = byOutcome(task);
  const found: Tried[] = [];
  const add = (loops: readonly (Tried | null)[]) => {
    found.push(...loops.filter((loop) => loop !== null));
    found.sort((a, b) => order(a.point, b.point));
  };
  const tryAll = (loops: readonly Omit<Tried, 'atLimit' | 'point'>[], toBeat: Outcome | null = null) =>
    Promise.all(
      loops.map(async (loop) => {
        const { structure, shape, motion } = loop;
        const { limit } = atLimit;
        const label = structure.name;
        const point = await work.run({ kind: 'trial', task, label, shape, limit, motion, toBeat });
        work.offer(limit, point);
        return point && { ...loop, atLimit, point };
      }),
    ).then(add);
  const tryTrims = (loops: readonly Tried[]) =>
    Promise.all(
      loops.flatMap((loop) =>
        TRIMS.map(async (trim) => {
          const otherwise = { ...motion, trim };
          const point = await work.run({ kind: 'trim', task, point: loop.point, motion: otherwise });
          work.offer(atLimit.limit, point);
          return point && { ...loop, motion: otherwise, point };
        }),
      ),
    ).then(add);
  const starts = atLimit.designs.flatMap(({ structure, design }) =>
    design ? [{ structure, shape: design.shape, motion }] : [],
  );
  work.leaveOut(atLimit.designs.length - starts.length);
  await tryAll(starts);

  if (trimsOf(task, trials) > 0) {
    const followers = [...found].sort((a, b) => a.point.rmsError - b.point.rmsError).slice(0, trimmed);
    work.leaveOut((trimmed - followers.length) * TRIMS.length);
    await tryTrims(followers);
  }

  for (let round = 1; round <= rounds; round++) {
    const [best] = found;
    if (best === undefined) work.leaveOut(NEIGHBOURS);
    else {
      const { settlingTime, rmsError, trip } = best.point;
      const around = neighboursOf(best.shape, 1 / round).map((shape) => ({ ...best, shape }));
      await tryAll(around, { settlingTime, rmsError, trip });
    }
  }
  return found;
}

/**
 * The best of each structure among the limits that the goal allows. A loop that a textbook rule
 * beats at the same limit is not worth testing further.
 */
export function finalistsOf(task: Task, wanted: LoopLimit, tried: readonly Tried[]): Tried[] {
  const order = byOutcome(task);
  const allowed = tried
    .filter(({ atLimit }) => atLimit.limit === wanted || isTighter(atLimit.limit, wanted))
    .sort((a, b) => order(a.point, b.point));
  const better = allowed.filter(
    ({ atLimit: { textbook }, point }) => !textbook || order(point, textbook) < 0,
  );
  const best = new Map<Structure, Tried>();
  for (const each of better.length > 0 ? better : allowed)
    if (!best.has(each.structure)) best.set(each.structure, each);
  return [...best.values()];
}

function isTighter(limit: LoopLimit, wanted: LoopLimit): boolean {
  return (
    limit.kind === 'peak sensitivity' && wanted.kind === 'peak sensitivity' && limit.limit < wanted.limit
  );
}
