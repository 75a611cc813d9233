import type { Scene } from '../../shared/core/scene.ts';
import type { Job } from '../../shared/study/job.ts';
import type { CandidateOutcome, CandidateProgress, KnownOutcome } from '../../shared/study/outcome.ts';
import { testAccuracy } from '../accuracy/accuracy.ts';
import { heldFor } from '../accuracy/heldFor.ts';
import { soundness } from '../pretune/tryOut.ts';
import { timeLapse } from '../timelapse/timeLapse.ts';
import { moveOutcome } from './moveOutcome.ts';

/** Shares of the work that are done after the moves, and after the day of heat. */
const MOVES_DONE = 0.05;
const HEAT_DONE = 0.15;

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
  onProgress: (progress: CandidateProgress) => void = () => {},
  known: KnownOutcome | null = null,
): CandidateOutcome {
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
  const accuracy = testAccuracy(scene, job, heat, reportTest, known);
  onProgress({ stage: 'Done', share: 1 });
  const { peakSensitivity, crossover } = loop;
  return { moves, heat, accuracy, peakSensitivity, crossover };
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
