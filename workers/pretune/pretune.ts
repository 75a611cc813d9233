import type { Scene } from '../../shared/core/scene.ts';
import type {
  PretuneBreadth,
  PretuneGoal,
  PretuneProgress,
  PretuneResult,
  TuningPoint,
} from '../../shared/protocol/pretune.ts';
import { explain } from './explain.ts';
import { lessStrict, limitOf, limitText } from './goal.ts';
import { designChanges, designed, type Job, type JobResult, SEARCH_POINTS } from './jobs.ts';
import type { LoopDesign } from './loopDesign.ts';
import type { LoopLimit } from './loopLimit.ts';
import { datasheetMotion, type MotionForce } from './motion.ts';
import { NEIGHBOURS, neighboursOf, TRIMS } from './neighbours.ts';
import { plantResponse } from './plantResponse.ts';
import type { JobPool } from './pool.ts';
import { byOutcome, byProof, type Proven } from './ranking.ts';
import type { Shape } from './shape.ts';
import { type Structure, structuresFor } from './structure.ts';
import { type Task, taskOf } from './task.ts';
import { VARIATIONS } from './variations.ts';
import { Work } from './work.ts';

/** How much is tried. */
export interface PretuneEffort {
  /** Loops per structure in the search over frequency responses. */
  readonly trials: number;
  /** Rounds of simulated runs about the best of each limit. */
  readonly rounds: number;
  /** Peak sensitivities of the trade-off, besides the one of the goal. */
  readonly sensitivities: readonly number[];
  /** Tunings whose robustness is proven before one of them is chosen. */
  readonly finalists: number;
}

export const FULL_EFFORT: PretuneEffort = {
  trials: 150,
  rounds: 2,
  sensitivities: [1.3, 1.4, 1.5, 1.7, 2, 2.4],
  finalists: 3,
};

export const EFFORTS: Readonly<Record<PretuneBreadth, PretuneEffort>> = {
  'one limit': { ...FULL_EFFORT, sensitivities: [] },
  'trade-off': FULL_EFFORT,
};

/** Loops whose feedforward is trimmed: those that follow best. */
const TRIMMED = 2;
/** Two peak sensitivities closer than this share are equal. */
const EQUAL = 0.005;

/** A shape that was tried out, and how it did. Structure and limit are places in their lists. */
interface Tried {
  readonly structure: number;
  readonly limit: number;
  readonly shape: Shape;
  readonly motion: MotionForce;
  readonly point: TuningPoint;
}

/**
 * Automatic pretuning. Loops are shaped on the frequency responses of the axis, then tried out in simulated runs, which decide. The same
 * scene and goal give the same result with any number of workers.
 *
 * @throws RangeError naming what of the goal cannot be
 */
export async function pretune(
  scene: Scene,
  goal: PretuneGoal,
  pool: JobPool<Job, JobResult>,
  onProgress: (progress: PretuneProgress) => void,
  effort: PretuneEffort = FULL_EFFORT,
): Promise<PretuneResult> {
  const limits = limitsOf(goal, effort);
  const task = taskOf(scene, goal.kind === 'settling' ? goal.window : undefined);
  const structures = structuresFor(plantResponse(designed(task), SEARCH_POINTS));
  const work = new Work(pool, jobsIn(task, structures, limits, effort), onProgress);

  work.enter('Shaping loops');
  const { trials } = effort;
  const [searches, asItIs, textbooks] = await Promise.all([
    Promise.all(structures.map((structure) => work.run({ kind: 'search', task, structure, limits, trials }))),
    work.run({ kind: 'as it is', task }),
    Promise.all(limits.map((limit) => work.run({ kind: 'textbook', task, limit }))),
  ]);
  const strongest = strongestOf(searches.map((designs) => designs[0]!));
  if (strongest === null)
    throw new RangeError(
      `No loop of this axis keeps ${limitText(limits[0]!)}. ${lessStrict(limits[0]!)}, or add damping.`,
    );

  work.enter('Measuring what the axis takes to move');
  const first = designChanges(task, strongest, datasheetMotion(task.scene.parameters));
  const motion = await work.run({ kind: 'motion', task, changes: first });

  work.enter('Trying loops out');
  const tried = await Promise.all(
    limits.map((limit, index) => {
      const designs = searches.map((each) => each[index] ?? null);
      return tryLoops(work, { task, structures, designs, limit, index, motion, rounds: effort.rounds });
    }),
  );

  work.enter('Proving robustness');
  const finalists = finalistsOf(task, limits, tried, textbooks).slice(0, effort.finalists);
  work.leaveOut((effort.finalists - finalists.length) * VARIATIONS.length);
  const proven = await Promise.all(finalists.map((finalist) => prove(work, task, finalist)));
  const [best] = proven.sort(byProof(task, goal));
  if (best === undefined || best.point.trip) {
    const why = best?.point.trip
      ? `With the best of them it trips: ${best.point.trip.message}`
      : `${lessStrict(limits[0]!)}.`;
    throw new RangeError(`No loop that keeps ${limitText(limits[0]!)} does the job with this drive. ${why}`);
  }

  return {
    judged: task.judged,
    figure: task.figure,
    best: best.point,
    textbook: await textbookAtPar(work, task, best.point, textbooks[best.limit] ?? null),
    points: [asItIs, ...textbooks, ...tried.map(([each]) => each?.point ?? null)].filter(
      (point) => point !== null,
    ),
    choices: explain({
      p: designed(task),
      limit: limits[best.limit]!,
      structures,
      structure: best.structure,
      shape: best.shape,
      designs: searches.map((designs) => designs[best.limit] ?? null),
      point: best.point,
      motion: best.motion,
    }),
    robustness: best.robustness,
  };
}

/** That of the goal, then those of the trade-off. */
function limitsOf(goal: PretuneGoal, { sensitivities }: PretuneEffort): readonly LoopLimit[] {
  const wanted = limitOf(goal);
  const others = sensitivities.filter(
    (limit) => wanted.kind !== 'peak sensitivity' || limit !== wanted.limit,
  );
  return [wanted, ...others.map((limit) => ({ kind: 'peak sensitivity' as const, limit }))];
}

function jobsIn(
  task: Task,
  structures: readonly Structure[],
  limits: readonly LoopLimit[],
  { rounds, finalists }: PretuneEffort,
): number {
  const asItIsAndMotionAndPar = 3;
  const perLimit = 1 + structures.length + trimsOf(task) + rounds * NEIGHBOURS;
  return structures.length + asItIsAndMotionAndPar + limits.length * perLimit + finalists * VARIATIONS.length;
}

/** Runs that trim the feedforward; it does nothing for a task without acceleration. */
function trimsOf({ figure }: Task): number {
  return figure === 'settling time' ? TRIMMED * TRIMS.length : 0;
}

function strongestOf(designs: readonly (LoopDesign | null)[]): LoopDesign | null {
  return designs.reduce(
    (best, design) => (design && design.gains.Ki > (best?.gains.Ki ?? 0) ? design : best),
    null,
  );
}

interface Trial {
  readonly task: Task;
  readonly structures: readonly Structure[];
  /** One of each structure; null where none keeps the limit. */
  readonly designs: readonly (LoopDesign | null)[];
  readonly limit: LoopLimit;
  readonly index: number;
  readonly motion: MotionForce;
  readonly rounds: number;
}

/** What the designs of one limit do in runs, and then shapes round the best of them. The best first. */
async function tryLoops(work: Work, trial: Trial): Promise<Tried[]> {
  const { task, structures, designs, limit, index, motion, rounds } = trial;
  const order = byOutcome(task);
  const found: Tried[] = [];
  const tryAll = async (loops: readonly Omit<Tried, 'limit' | 'point'>[]) => {
    const points = await Promise.all(
      loops.map(({ structure, shape, motion }) =>
        work.run({ kind: 'trial', task, label: structures[structure]!.name, shape, limit, motion }),
      ),
    );
    for (const [k, point] of points.entries())
      if (point !== null) found.push({ ...loops[k]!, limit: index, point });
    found.sort((a, b) => order(a.point, b.point));
  };
  const starts = designs.flatMap((design, structure) =>
    design ? [{ structure, shape: design.shape, motion }] : [],
  );
  work.leaveOut(designs.length - starts.length);
  await tryAll(starts);

  if (trimsOf(task) > 0) {
    const followers = [...found].sort((a, b) => a.point.rmsError - b.point.rmsError).slice(0, TRIMMED);
    work.leaveOut((TRIMMED - followers.length) * TRIMS.length);
    await tryAll(
      followers.flatMap((loop) => TRIMS.map((trim) => ({ ...loop, motion: { ...motion, trim } }))),
    );
  }

  for (let round = 1; round <= rounds; round++) {
    const [best] = found;
    if (best === undefined) work.leaveOut(NEIGHBOURS);
    else await tryAll(neighboursOf(best.shape, 1 / round).map((shape) => ({ ...best, shape })));
  }
  return found;
}

/** The best of each structure among the limits that the goal allows. What a textbook beats at the same limit is not worth proving. */
function finalistsOf(
  task: Task,
  limits: readonly LoopLimit[],
  tried: readonly (readonly Tried[])[],
  textbooks: readonly (TuningPoint | null)[],
): Tried[] {
  const order = byOutcome(task);
  const wanted = limits[0]!;
  const allowed = tried
    .flat()
    .filter(({ limit }) => limit === 0 || isTighter(limits[limit]!, wanted))
    .sort((a, b) => order(a.point, b.point));
  const better = allowed.filter(({ limit, point }) => {
    const textbook = textbooks[limit];
    return !textbook || order(point, textbook) < 0;
  });
  const best = new Map<number, Tried>();
  for (const each of better.length > 0 ? better : allowed)
    if (!best.has(each.structure)) best.set(each.structure, each);
  return [...best.values()];
}

function isTighter(limit: LoopLimit, wanted: LoopLimit): boolean {
  return (
    limit.kind === 'peak sensitivity' && wanted.kind === 'peak sensitivity' && limit.limit < wanted.limit
  );
}

async function prove(work: Work, task: Task, finalist: Tried): Promise<Tried & Proven> {
  const { changes } = finalist.point;
  const robustness = await Promise.all(
    VARIATIONS.map((_, index) => work.run({ kind: 'variation', task, changes, index })),
  );
  return { ...finalist, robustness };
}

/** The textbook tuning that is as close to instability as a point; the one of the same limit, if it is. */
async function textbookAtPar(
  work: Work,
  task: Task,
  { peakSensitivity }: TuningPoint,
  sameLimit: TuningPoint | null,
): Promise<TuningPoint | null> {
  if (sameLimit && Math.abs(sameLimit.peakSensitivity / peakSensitivity - 1) < EQUAL) {
    work.leaveOut(1);
    return sameLimit;
  }
  return work.run({ kind: 'textbook', task, limit: { kind: 'peak sensitivity', limit: peakSensitivity } });
}
