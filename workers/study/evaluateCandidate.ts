import type { Scene } from '../../shared/core/scene.ts';
import type { Job } from '../../shared/study/job.ts';
import {
  type CandidateOutcome,
  type CandidateProgress,
  type ColdTests,
  type DayOutcome,
  joinedOutcome,
  type KnownOutcome,
} from '../../shared/study/outcome.ts';
import { testCold, testWarm } from '../accuracy/accuracy.ts';
import { heldFor } from '../accuracy/heldFor.ts';
import { soundness } from '../pretune/tryOut.ts';
import { timeLapse } from '../timelapse/timeLapse.ts';
import { moveOutcome } from './moveOutcome.ts';

type OnProgress = (progress: CandidateProgress) => void;

/** Shares of the work of the day that are done after the moves, and after the heat. */
const MOVES_DONE = 0.1;
const HEAT_DONE = 0.35;

/**
 * Everything that simulation can tell about a candidate drive for a job: its moves, its loop, its
 * day of heat, its accuracy. `scene` is the tuned axis of the candidate. Of what is `known` of it
 * under another job, only that is done again which differs.
 *
 * @throws RangeError when a cycle of the job is too long to be run
 */
export function evaluateCandidate(
  job: Job,
  scene: Scene,
  onProgress: OnProgress = () => {},
  known: KnownOutcome | null = null,
): CandidateOutcome {
  const day = evaluateDay(job, scene, ({ stage, share }) => onProgress({ stage, share: share / 2 }), known);
  const cold = evaluateCold(
    job,
    scene,
    ({ stage, share }) => onProgress({ stage, share: (1 + share) / 2 }),
    known,
  );
  return joinedOutcome(day, cold);
}

/**
 * One half of it: the moves, the loop, the day of heat, and the tests at its end.
 *
 * @throws RangeError when a cycle of the job is too long to be run
 */
export function evaluateDay(
  job: Job,
  scene: Scene,
  onProgress: OnProgress,
  known: KnownOutcome | null,
): DayOutcome {
  onProgress({ stage: 'Moves', share: 0 });
  const moves = known?.outcome.moves ?? moveOutcome(scene);
  const loop = known?.outcome ?? loopFigures(scene);

  const reportHeat = (share: number) =>
    onProgress({ stage: 'A day of heat', share: MOVES_DONE + (HEAT_DONE - MOVES_DONE) * share });
  reportHeat(0);
  const { dailyTime, growthLimit } = job.values;
  const heat =
    heldFor(job, known, 'dailyTime', 'growthLimit')?.heat ??
    timeLapse(scene, { hours: dailyTime / 3600, growthTarget: growthLimit || null }, reportHeat);

  const reportTest = ({ stage, share }: CandidateProgress) =>
    onProgress({ stage, share: HEAT_DONE + (1 - HEAT_DONE) * share });
  const warm = testWarm(scene, job, heat, reportTest, known);
  onProgress({ stage: 'Done', share: 1 });
  const { peakSensitivity, crossover } = loop;
  return { moves, heat, warm, peakSensitivity, crossover };
}

/** The other half: the tests of the cold axis, which wait for nothing. */
export function evaluateCold(
  job: Job,
  scene: Scene,
  onProgress: OnProgress,
  known: KnownOutcome | null,
): ColdTests {
  const cold = testCold(scene, job, onProgress, known);
  onProgress({ stage: 'Done', share: 1 });
  return cold;
}

/**
 * A load that no current can hold has no operating point to linearise about: the loop counts as
 * unstable.
 */
function loopFigures({ parameters }: Scene): Pick<CandidateOutcome, 'peakSensitivity' | 'crossover'> {
  try {
    const { peakSensitivity, crossover } = soundness(parameters);
    return { peakSensitivity, crossover };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { peakSensitivity: Number.POSITIVE_INFINITY, crossover: null };
  }
}
