import { at } from '../../shared/core/at.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import type {
  PretuneBreadth,
  PretuneGoal,
  PretuneProgress,
  PretuneResult,
  TuningPoint,
} from '../../shared/protocol/pretune.ts';
import { explain } from './explain.ts';
import { foreseen } from './foreseen.ts';
import { lessStrict, limitOf, limitText } from './goal.ts';
import { designChanges, designed, type Job, type JobResult, SEARCH_POINTS } from './jobs.ts';
import type { LoopDesign } from './loopDesign.ts';
import type { LoopLimit } from './loopLimit.ts';
import { datasheetMotion } from './motion.ts';
import { plantResponse } from './plantResponse.ts';
import type { JobPool } from './pool.ts';
import { proveAll } from './proof.ts';
import type { Proven } from './ranking.ts';
import { type Structure, structuresFor } from './structure.ts';
import { type Task, taskOf } from './task.ts';
import {
  type AtLimit,
  carriedTrialsOf,
  carryOver,
  finalistsOf,
  type Trials,
  type Tried,
  trialsOf,
  tryLoops,
} from './tried.ts';
import { VARIATIONS } from './variations.ts';
import { Work } from './work.ts';

/** Effort of a pretuning. */
export interface PretuneEffort {
  /** Loops of a structure in the search on frequency responses; fewer where it has few coordinates. */
  readonly trials: number;
  /** What is tried at the limit of the goal. */
  readonly wanted: Trials;
  /** Peak sensitivities of the trade-off, in addition to that of the goal. */
  readonly sensitivities: readonly number[];
  /** Number of tunings whose robustness is tested before one of them is chosen. */
  readonly finalists: number;
}

const FULL_EFFORT: PretuneEffort = {
  trials: 150,
  wanted: { rounds: 2, trimmed: 2 },
  sensitivities: [1.3, 1.4, 1.5, 1.7, 2, 2.4],
  finalists: 3,
};

export const EFFORTS: Readonly<Record<PretuneBreadth, PretuneEffort>> = {
  'one limit': { ...FULL_EFFORT, sensitivities: [] },
  'trade-off': FULL_EFFORT,
};

/** Peak sensitivities closer than this share count as equal. */
const EQUAL = 0.005;

/** A run of the scene as it is, the textbook's tuning at the sensitivity of the best, and the courses of both tunings. */
const JOBS_BESIDE = 4;

/**
 * Automatic pretuning. Loops are shaped on the frequency responses of the axis, then tried out in
 * simulated runs, which decide. The same scene and goal give the same result with any number of
 * workers.
 *
 * @throws RangeError naming the value of the goal that is out of range, or when no loop does the
 * job
 */
export async function pretune(
  scene: Scene,
  goal: PretuneGoal,
  pool: JobPool<Job, JobResult>,
  onProgress: (progress: PretuneProgress) => void,
  effort: PretuneEffort = FULL_EFFORT,
): Promise<PretuneResult> {
  const search = await searched(scene, goal, pool, onProgress, effort, JOBS_BESIDE);
  const { task, work, best } = search;

  work.enter('Comparing with the textbook and the scene as it is');
  const course = ({ changes }: TuningPoint) => work.run({ kind: 'course', task, changes });
  const [asItIs, bestCourse, [textbook, textbookCourse]] = await Promise.all([
    work.run({ kind: 'as it is', task }),
    course(best.point),
    textbookAtPar(work, task, best).then(async (point) => {
      if (point === null) work.leaveOut(1);
      return [point, point && (await course(point))] as const;
    }),
  ]);
  return {
    goal,
    judged: task.judged,
    figure: task.figure,
    best: best.point,
    textbook,
    courses: { best: bestCourse, textbook: textbookCourse },
    points: [asItIs, ...search.points],
    choices: explain(designed(task), best),
    robustness: best.robustness,
  };
}

/**
 * The best tuning at the limit of the goal alone, with nothing to compare it with.
 *
 * @throws as `pretune`
 */
export async function tune(
  scene: Scene,
  goal: PretuneGoal,
  pool: JobPool<Job, JobResult>,
  onProgress: (progress: PretuneProgress) => void,
  effort: PretuneEffort = EFFORTS['one limit'],
): Promise<TuningPoint> {
  const { best } = await searched(scene, goal, pool, onProgress, effort, 0);
  return best.point;
}

interface Searched {
  readonly task: Task;
  readonly work: Work;
  readonly best: Tried & Proven;
  /** Tunings that were run: the textbook's, and the best ones at rising peak sensitivity. */
  readonly points: readonly TuningPoint[];
}

/** `jobsBeside`: how many jobs come after the search. */
async function searched(
  scene: Scene,
  goal: PretuneGoal,
  pool: JobPool<Job, JobResult>,
  onProgress: (progress: PretuneProgress) => void,
  effort: PretuneEffort,
  jobsBeside: number,
): Promise<Searched> {
  const wanted = limitOf(goal);
  const others = tradeOff(wanted, effort);
  const limits = [wanted, ...others];
  const task = taskOf(scene, goal.kind === 'settling' ? goal.window : undefined);
  const structures = structuresFor(plantResponse(designed(task), SEARCH_POINTS), task.scene.parameters);
  const total = jobsIn(task, structures.length, limits.length, effort) + jobsBeside;
  const work = new Work(pool, task, wanted, total, onProgress);
  const textbookAt = (limit: LoopLimit) => work.run({ kind: 'textbook', task, limit });

  work.enter('Shaping loops');
  // The textbook of the goal before all others: it is the first answer that can be used.
  const shaping = Promise.all([
    textbookAt(wanted).then((point) => {
      work.offer(wanted, point);
      return point;
    }),
    shapeLoops(work, task, structures, limits, effort.trials),
  ]);
  // While the workers are at it.
  work.foresee(foreseen(task, wanted));
  const [textbookAtWanted, shaped] = await shaping;
  const atWanted = { limit: wanted, designs: at(shaped, 0), textbook: textbookAtWanted };

  work.enter('Measuring the force that moves the axis');
  const first = designChanges(task, strongestOf(atWanted), datasheetMotion(task.scene.parameters));
  const motion = await work.run({ kind: 'motion', task, changes: first });

  work.enter('Trying out loops');
  const [tried, textbooks] = await Promise.all([
    tryLoops(work, task, atWanted, motion, effort.wanted),
    Promise.all(others.map(textbookAt)),
  ]);
  if (others.length > 0) work.enter('Filling in the trade-off');
  const elsewhere = await Promise.all(
    others.map((limit, k) => {
      const atLimit = { limit, designs: at(shaped, k + 1), textbook: at(textbooks, k) };
      return carryOver(work, task, atLimit, motion, tried[0]);
    }),
  );

  work.enter('Testing robustness');
  const finalists = finalistsOf(task, wanted, [tried, ...elsewhere].flat()).slice(0, effort.finalists);
  work.leaveOut((effort.finalists - finalists.length) * VARIATIONS.length);
  const best = bestOf(await proveAll(work, task, goal, finalists), wanted);

  const tunings = [tried, ...elsewhere].map(([each]) => each?.point ?? null);
  const points = [textbookAtWanted, ...textbooks, ...tunings].filter((point) => point !== null);
  return { task, work, best, points };
}

/** The limits of the trade-off, in addition to that of the goal. */
function tradeOff(wanted: LoopLimit, { sensitivities }: PretuneEffort): LoopLimit[] {
  return sensitivities
    .filter((limit) => wanted.kind !== 'peak sensitivity' || limit !== wanted.limit)
    .map((limit) => ({ kind: 'peak sensitivity', limit }));
}

function jobsIn(
  task: Task,
  structures: number,
  limits: number,
  { wanted, finalists }: PretuneEffort,
): number {
  const motion = 1;
  const trials = trialsOf(task, structures, wanted) + (limits - 1) * carriedTrialsOf(task, structures);
  const textbooks = limits;
  return structures + motion + textbooks + trials + finalists * VARIATIONS.length;
}

/** The designs of every structure, by limit. */
async function shapeLoops(
  work: Work,
  task: Task,
  structures: readonly Structure[],
  limits: readonly LoopLimit[],
  trials: number,
): Promise<AtLimit['designs'][]> {
  const searches = await Promise.all(
    structures.map((structure) => work.run({ kind: 'search', task, structure, limits, trials })),
  );
  return limits.map((_, k) =>
    structures.map((structure, n) => ({ structure, design: at(at(searches, n), k) })),
  );
}

/**
 * Of the designs within the wanted limit, the one with the largest integral gain.
 *
 * @throws RangeError when there is none
 */
function strongestOf({ limit, designs }: AtLimit): LoopDesign {
  let strongest: LoopDesign | null = null;
  for (const { design } of designs)
    if (design && design.rejection > (strongest?.rejection ?? 0)) strongest = design;
  if (strongest === null)
    throw new RangeError(
      `No loop of this axis keeps ${limitText(limit)}. ${lessStrict(limit)}, or add damping.`,
    );
  return strongest;
}

/** @throws RangeError when not even the best does the job */
function bestOf([best]: readonly (Tried & Proven)[], wanted: LoopLimit): Tried & Proven {
  if (best !== undefined && best.point.trip === null) return best;
  const why = best?.point.trip
    ? `With the best of them it trips: ${tripText(best.point.trip, 'metric')}`
    : `${lessStrict(wanted)}.`;
  throw new RangeError(`No loop that keeps ${limitText(wanted)} does the job with this drive. ${why}`);
}

/**
 * The textbook tuning that is as close to instability as the best tuning: that of the same limit,
 * where it is.
 */
async function textbookAtPar(work: Work, task: Task, { atLimit, point }: Tried): Promise<TuningPoint | null> {
  const { textbook } = atLimit;
  const { peakSensitivity } = point;
  if (textbook && Math.abs(textbook.peakSensitivity / peakSensitivity - 1) < EQUAL) {
    work.leaveOut(1);
    return textbook;
  }
  return work.run({ kind: 'textbook', task, limit: { kind: 'peak sensitivity', limit: peakSensitivity } });
}
