import type { Scene } from '../../shared/core/scene.ts';
import type { Accuracy, PositioningTest, TestResult } from '../../shared/protocol/accuracy.ts';
import type { TimeLapse } from '../../shared/protocol/timeLapse.ts';
import type { Job, JobEntry } from '../../shared/study/job.ts';
import type { CandidateProgress, ColdTests, KnownOutcome, WarmTests } from '../../shared/study/outcome.ts';
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

type Warm = Exclude<PositioningTest['state'], 'cold'>;

/** What a positioning test depends on besides the axis. */
const POSITIONING_ENTRIES: Readonly<Record<PositioningTest['state'], readonly JobEntry[]>> = {
  cold: ['travel'],
  warm: ['travel', 'dailyTime'],
  worn: ['travel', 'dailyTime', 'wear'],
};

/**
 * Runs the tests that show a candidate drive and not its heat, on the axis as cold as the room: positioning, staircase, scan, smallest step
 * and sudden force.
 */
export function testCold(
  scene: Scene,
  job: Job,
  onProgress: (progress: CandidateProgress) => void,
  known: KnownOutcome | null = null,
): ColdTests {
  const run = series(job, known, 5, onProgress);
  return {
    positioning: run(
      'Positioning, cold',
      POSITIONING_ENTRIES.cold,
      (accuracy) => accuracy.positioning[0],
      () => positioning(scene, job, 'cold'),
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
  };
}

/**
 * Runs the tests on the axis as warm as it is at the end of the day: positioning, also worn where there is a nut that wears, and the energy
 * of a cycle.
 *
 * @param heat the day of the job, whose last temperatures are those of the axis
 */
export function testWarm(
  scene: Scene,
  job: Job,
  heat: TimeLapse,
  onProgress: (progress: CandidateProgress) => void,
  known: KnownOutcome | null = null,
): WarmTests {
  const states: Warm[] = scene.parameters.lead > 0 ? ['warm', 'worn'] : ['warm'];
  const run = series(job, known, states.length + 1, onProgress);
  return {
    positioning: states.map((state, k) =>
      run(
        `Positioning, ${state}`,
        POSITIONING_ENTRIES[state],
        (accuracy) => accuracy.positioning[k + 1],
        () => atDaysEnd(heat, (start) => positioning(scene, job, state, start)),
      ),
    ),
    energy: run(
      'Energy of a cycle',
      ['dailyTime'],
      (accuracy) => accuracy.energy,
      () => atDaysEnd(heat, (start) => energyFlow(scene, start)),
    ),
  };
}

/** Runs so many tests one after the other: each gives the result that is known, if the entries of the job that it depends on have not changed. */
function series(
  job: Job,
  known: KnownOutcome | null,
  total: number,
  onProgress: (progress: CandidateProgress) => void,
) {
  let done = 0;
  return <T>(
    stage: string,
    entries: readonly JobEntry[],
    of: (accuracy: Accuracy) => TestResult<T> | undefined,
    test: () => TestResult<T>,
  ): TestResult<T> => {
    onProgress({ stage, share: done++ / total });
    const held = heldFor(job, known, ...entries);
    return (held && of(held.accuracy)) ?? tested(test);
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
