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
import { byProof, type Proven } from './ranking.ts';
import { type Structure, structuresFor } from './structure.ts';
import { type Task, taskOf } from './task.ts';
import { type AtLimit, finalistsOf, type Trials, type Tried, trialsOf, tryLoops } from './tried.ts';
import { VARIATIONS } from './variations.ts';
import { Work } from './work.ts';

/** Effort of a pretuning. */
export interface PretuneEffort {
  /** Loops per structure in the search on frequency responses. */
  readonly trials: number;
  /** What is tried at the limit of the goal. */
  readonly wanted: Trials;
  /** Peak sensitivities of the trade-off, in addition to that of the goal, and what is tried at each. */
  readonly sensitivities: readonly number[];
  readonly others: Trials;
  /** Number of tunings whose robustness is tested before one of them is chosen. */
  readonly finalists: number;
}

const FULL_EFFORT: PretuneEffort = {
  trials: 150,
  wanted: { rounds: 2, trimmed: 2 },
  others: { rounds: 2, trimmed: 1 },
  sensitivities: [1.3, 1.4, 1.5, 1.7, 2, 2.4],
  finalists: 3,
};

export const EFFORTS: Readonly<Record<PretuneBreadth, PretuneEffort>> = {
  'one limit': { ...FULL_EFFORT, sensitivities: [] },
  'trade-off': FULL_EFFORT,
};

/** Peak sensitivities closer than this share count as equal. */
const EQUAL = 0.005;

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
  const wanted = limitOf(goal);
  const limits = [wanted, ...tradeOff(wanted, effort)];
  const task = taskOf(scene, goal.kind === 'settling' ? goal.window : undefined);
  const structures = structuresFor(plantResponse(designed(task), SEARCH_POINTS), task.scene.parameters);
  const total = jobsIn(task, structures.length, limits.length, effort);
  const work = new Work(pool, task, wanted, total, onProgress);

  work.enter('Shaping loops');
  const shaping = Promise.all([
    shapeLoops(work, task, structures, limits, effort.trials),
    work.run({ kind: 'as it is', task }),
  ]);
  // While the workers are at it.
  work.foresee(foreseen(task, wanted));
  const [shaped, asItIs] = await shaping;

  work.enter('Measuring the force that moves the axis');
  const first = designChanges(task, strongestOf(shaped, wanted), datasheetMotion(task.scene.parameters));
  const motion = await work.run({ kind: 'motion', task, changes: first });

  work.enter('Trying out loops');
  const tried = await Promise.all(
    shaped.map((atLimit) =>
      tryLoops(work, task, atLimit, motion, atLimit.limit === wanted ? effort.wanted : effort.others),
    ),
  );

  work.enter('Testing robustness');
  const finalists = finalistsOf(task, wanted, tried.flat()).slice(0, effort.finalists);
  work.leaveOut((effort.finalists - finalists.length) * VARIATIONS.length);
  const proven = await Promise.all(finalists.map((finalist) => prove(work, task, finalist)));
  const best = bestOf(proven.sort(byProof(task, goal)), wanted);

  const textbook = await textbookAtPar(work, task, best);
  const course = ({ changes }: TuningPoint) => work.run({ kind: 'course', task, changes });
  if (textbook === null) work.leaveOut(1);
  const textbooks = shaped.map((atLimit) => atLimit.textbook);
  return {
    goal,
    judged: task.judged,
    figure: task.figure,
    best: best.point,
    textbook,
    courses: { best: await course(best.point), textbook: textbook && (await course(textbook)) },
    points: [asItIs, ...textbooks, ...tried.map(([each]) => each?.point ?? null)].filter(
      (point) => point !== null,
    ),
    choices: explain(designed(task), best),
    robustness: best.robustness,
  };
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
  { wanted, others, finalists }: PretuneEffort,
): number {
  const asItIsAndMotionAndParAndCourses = 5;
  const trials = trialsOf(task, structures, wanted) + (limits - 1) * trialsOf(task, structures, others);
  const textbooks = limits;
  return structures + asItIsAndMotionAndParAndCourses + textbooks + trials + finalists * VARIATIONS.length;
}

/** The designs of every structure and the textbook's tuning, by limit. */
async function shapeLoops(
  work: Work,
  task: Task,
  structures: readonly Structure[],
  limits: readonly LoopLimit[],
  trials: number,
): Promise<AtLimit[]> {
  const textbook = async (limit: LoopLimit) => {
    const point = await work.run({ kind: 'textbook', task, limit });
    work.offer(limit, point);
    return point;
  };
  // That of the goal before all others: it is the first answer that can be used.
  const [wanted, ...others] = limits;
  const first = wanted && textbook(wanted);
  const [searches, textbooks] = await Promise.all([
    Promise.all(
      structures.map(async (structure) => ({
        structure,
        designs: await work.run({ kind: 'search', task, structure, limits, trials }),
      })),
    ),
    Promise.all([first, ...others.map(textbook)]),
  ]);
  return limits.map((limit, k) => ({
    limit,
    designs: searches.map(({ structure, designs }) => ({ structure, design: designs[k] ?? null })),
    textbook: textbooks[k] ?? null,
  }));
}

/**
 * Of the designs within the wanted limit, the one with the largest integral gain.
 *
 * @throws RangeError when there is none
 */
function strongestOf(shaped: readonly AtLimit[], wanted: LoopLimit): LoopDesign {
  const designs = shaped.find(({ limit }) => limit === wanted)?.designs ?? [];
  let strongest: LoopDesign | null = null;
  for (const { design } of designs)
    if (design && design.rejection > (strongest?.rejection ?? 0)) strongest = design;
  if (strongest === null)
    throw new RangeError(
      `No loop of this axis keeps ${limitText(wanted)}. ${lessStrict(wanted)}, or add damping.`,
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

async function prove(work: Work, task: Task, finalist: Tried): Promise<Tried & Proven> {
  const { changes } = finalist.point;
  const robustness = await Promise.all(
    VARIATIONS.map((_, index) => work.run({ kind: 'variation', task, changes, index })),
  );
  return { ...finalist, robustness };
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
