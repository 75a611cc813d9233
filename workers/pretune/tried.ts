import type { TuningPoint } from '../../shared/protocol/pretune.ts';
import type { LoopDesign } from './loopDesign.ts';
import type { LoopLimit } from './loopLimit.ts';
import type { MotionForce } from './motion.ts';
import { changedAlike, NEIGHBOURS, neighboursOf, TRIMS } from './neighbours.ts';
import { byOutcome, isAtOnce, type Outcome, outcomeOf } from './ranking.ts';
import type { Shape } from './shape.ts';
import type { Structure } from './structure.ts';
import type { Task } from './task.ts';
import type { Work } from './work.ts';

/** What is tried at the limit of the goal. */
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

type Loop = Pick<Tried, 'structure' | 'shape' | 'motion'>;

/** Loops at another limit than that of the goal whose feedforward is trimmed. */
const TRIMMED_ELSEWHERE = 1;

/** Largest number of simulated runs at the limit of the goal. */
export function trialsOf(task: Task, structures: number, { rounds, trimmed }: Trials): number {
  return structures + trimsOf(task, trimmed) + rounds * NEIGHBOURS;
}

/** Largest number of simulated runs at another limit: the loop that is carried over is one of them. */
export function carriedTrialsOf(task: Task, structures: number): number {
  return structures + 1 + trimsOf(task, TRIMMED_ELSEWHERE);
}

/** Simulated runs that trim the feedforward of so many loops; it has no effect on a task without acceleration. */
function trimsOf({ figure }: Task, loops: number): number {
  return figure === 'settling time' ? loops * TRIMS.length : 0;
}

/**
 * Tries out the designs of the limit of the goal in simulated runs, and then shapes around the best of them. Best first.
 */
export async function tryLoops(
  work: Work,
  task: Task,
  atLimit: AtLimit,
  motion: MotionForce,
  trials: Trials,
): Promise<Tried[]> {
  const runs = new Runs(work, task, atLimit);
  await runs.tryShapes(startsOf(atLimit, motion));
  await runs.tryTrims(trials.trimmed);
  for (let round = 1; round <= trials.rounds; round++) {
    const [best] = runs.found;
    if (best === undefined) break;
    const around = neighboursOf(best.shape, 1 / round).map((shape) => ({ ...best, shape }));
    await runs.tryShapes(around, best.point);
  }
  work.leaveOut(trialsOf(task, atLimit.designs.length, trials) - runs.count);
  return runs.found;
}

/**
 * The same at another limit, for the trade-off. What has proved best at the limit of the goal shows the way: its structure is tried before the
 * others, and then changed as trials have changed it there. Best first.
 */
export async function carryOver(
  work: Work,
  task: Task,
  atLimit: AtLimit,
  motion: MotionForce,
  best: Tried | undefined,
): Promise<Tried[]> {
  const runs = new Runs(work, task, atLimit);
  const starts = startsOf(atLimit, motion);
  const first = starts.find(({ structure }) => structure === best?.structure);
  const others = starts.filter((loop) => loop !== first);
  if (best && first) {
    await runs.tryShapes([first]);
    const before = startsOf(best.atLimit, motion).find(({ structure }) => structure === best.structure);
    if (before) others.push({ ...best, shape: changedAlike(first.shape, before.shape, best.shape) });
  }
  await runs.tryShapes(others, runs.found[0]?.point);
  await runs.tryTrims(TRIMMED_ELSEWHERE);
  work.leaveOut(carriedTrialsOf(task, atLimit.designs.length) - runs.count);
  return runs.found;
}

function startsOf({ designs }: AtLimit, motion: MotionForce): Loop[] {
  return designs.flatMap(({ structure, design }) =>
    design ? [{ structure, shape: design.shape, motion }] : [],
  );
}

/** Simulated runs at one limit. */
class Runs {
  /** Best first. */
  readonly found: Tried[] = [];
  /** How many there were. */
  count = 0;
  readonly #work: Work;
  readonly #task: Task;
  readonly #atLimit: AtLimit;

  constructor(work: Work, task: Task, atLimit: AtLimit) {
    this.#work = work;
    this.#task = task;
    this.#atLimit = atLimit;
  }

  /** As fast as the limit allows each of these shapes to be, with the trim that it has; those that do not come before an outcome are dropped. */
  async tryShapes(loops: readonly Loop[], before?: Outcome): Promise<void> {
    const { limit } = this.#atLimit;
    const toBeat = before ? outcomeOf(before) : null;
    await this.#tryAll(loops, ({ structure, shape, motion }) => {
      const label = structure.name;
      return this.#work.run({ kind: 'trial', task: this.#task, label, shape, limit, motion, toBeat });
    });
  }

  /** Trims the feedforward of so many of the loops found that arrive late: those that follow best. A trim that is no better than none is dropped. */
  async tryTrims(most: number): Promise<void> {
    if (trimsOf(this.#task, most) === 0) return;
    const late = this.found
      .filter(({ point }) => !isAtOnce(this.#task, point))
      .sort((a, b) => a.point.rmsError - b.point.rmsError)
      .slice(0, most);
    const trimmed = late.flatMap((loop) =>
      TRIMS.map((trim) => ({ ...loop, motion: { ...loop.motion, trim } })),
    );
    await this.#tryAll(trimmed, ({ point, motion }) =>
      this.#work.run({ kind: 'trim', task: this.#task, point, motion }),
    );
  }

  async #tryAll<L extends Loop>(
    loops: readonly L[],
    run: (loop: L) => Promise<TuningPoint | null>,
  ): Promise<void> {
    this.count += loops.length;
    const atLimit = this.#atLimit;
    const tried = await Promise.all(
      loops.map(async (loop): Promise<Tried | null> => {
        const point = await run(loop);
        this.#work.offer(atLimit.limit, point);
        return point && { ...loop, atLimit, point };
      }),
    );
    const order = byOutcome(this.#task);
    this.found.push(...tried.filter((each) => each !== null));
    this.found.sort((a, b) => order(a.point, b.point));
  }
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
