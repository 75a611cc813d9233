import type { Scene } from '../../shared/core/scene.ts';
import type { Accuracy, PositioningTest, TestResult } from '../../shared/protocol/accuracy.ts';
import type { TimeLapse } from '../../shared/protocol/timeLapse.ts';
import type { Job, JobEntry } from '../../shared/study/job.ts';
import type { CandidateProgress, KnownOutcome } from '../../shared/study/outcome.ts';
import type { AxisStart } from '../run/axis.ts';
import { tripOf } from '../run/tripOf.ts';
import { disturbance } from './disturbance.ts';
import { energyFlow } from './energy.ts';
import { heldFor } from './heldFor.ts';
import { increment } from './increment.ts';
import { positioning } from './positioning.ts';
import { ripple } from './ripple.ts';
import { staircase } from './staircase.ts';
import { tested } from './testAxis.ts';

type State = PositioningTest['state'];

/** What a positioning test depends on besides the axis. */
const POSITIONING_ENTRIES: Readonly<Record<State, readonly JobEntry[]>> = {
  cold: ['travel'],
  warm: ['travel', 'dailyTime'],
  worn: ['travel', 'dailyTime', 'wear'],
};

/**
 * Runs every accuracy test on a candidate. Staircase, scan, smallest step and sudden force are run
 * cold, so that they show the drive and not its heat; the energy is that of a cycle at the end of
 * the day.
 *
 * @param heat the day of the job, whose last temperatures are those of the warm axis
 */
export function testAccuracy(
  scene: Scene,
  job: Job,
  heat: TimeLapse,
  onProgress: (progress: CandidateProgress) => void,
  known: KnownOutcome | null = null,
): Accuracy {
  const states: State[] = scene.parameters.lead > 0 ? ['cold', 'warm', 'worn'] : ['cold', 'warm'];
  const total = states.length + 5;
  let done = 0;
  /** The result that is known, if the entries of the job that it depends on have not changed; else the test. */
  const run = <T>(
    stage: string,
    entries: readonly JobEntry[],
    of: (accuracy: Accuracy) => TestResult<T> | undefined,
    test: () => TestResult<T>,
  ): TestResult<T> => {
    onProgress({ stage, share: done++ / total });
    const held = heldFor(job, known, ...entries);
    return (held && of(held.accuracy)) ?? tested(test);
  };
  return {
    positioning: states.map((state, k) =>
      run(
        `Positioning, ${state}`,
        POSITIONING_ENTRIES[state],
        (accuracy) => accuracy.positioning[k],
        () => {
          if (state === 'cold') return positioning(scene, job, state);
          return atDaysEnd(heat, (start) => positioning(scene, job, state, start));
        },
      ),
    ),
    staircase: run(
      'Staircase',
      [],
      (accuracy) => accuracy.staircase,
      () => staircase(scene),
    ),
    ripple: run(
      'Scan at constant speed',
      ['scanLength', 'scanSpeed', 'rippleBandwidth'],
      (accuracy) => accuracy.ripple,
      () => ripple(scene, job),
    ),
    increment: run(
      'Smallest step',
      [],
      (accuracy) => accuracy.increment,
      () => increment(scene),
    ),
    disturbance: run(
      'Sudden force',
      [],
      (accuracy) => accuracy.disturbance,
      () => disturbance(scene),
    ),
    energy: run(
      'Energy of a cycle',
      ['dailyTime'],
      (accuracy) => accuracy.energy,
      () => atDaysEnd(heat, (start) => energyFlow(scene, start)),
    ),
  };
}

/**
 * Runs a test on the axis as warm as the day leaves it; returns the trip of a day that could not
 * even begin.
 */
function atDaysEnd<T>({ asSet }: TimeLapse, test: (start: AxisStart) => T): TestResult<T> {
  const last = asSet.samples.at(-1);
  if (last === undefined) return { trip: tripOf(asSet) };
  const { winding, carrier, table, screw } = last;
  return test({ temperatures: { winding, carrier, table, screw } });
}
