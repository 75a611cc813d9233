import { sizeLane } from '../../shared/sizing/sizeLane.ts';
import type { Job } from '../../shared/study/job.ts';
import type { MoveOutcome } from '../../shared/study/outcome.ts';
import type { JudgedLane } from '../../shared/study/verdict.ts';
import type { LapseSample } from '../../shared/timeLapse.ts';
import { sampleJob, sampleLanes } from '../study/sampleOutcome.ts';

/** What the samples are judged by, whatever job a study opens with. */
export const JUDGED_JOB = sampleJob({
  payload: 5,
  tableMass: 8,
  travel: 0.4,
  stroke: 0.25,
  moveTime: 0.4,
  dwell: 0.2,
  window: 1e-7,
  rippleLimit: 0.02,
  growthLimit: 5e-6,
  dailyTime: 8 * 3600,
});

/** The sample lanes, sized for the job by the calculation that the page uses. */
export function sizedLanes(job: Job = JUDGED_JOB): JudgedLane[] {
  return sampleLanes(job).map((lane) => ({ ...lane, sizing: sizeLane(job, lane.scene) }));
}

export function relettered(lane: JudgedLane, letter: string, title = lane.title): JudgedLane {
  return { ...lane, letter, title, scene: { ...lane.scene, title } };
}

export function withMoves(lane: JudgedLane, moves: Partial<MoveOutcome>): JudgedLane {
  return { ...lane, outcome: { ...lane.outcome, moves: { ...lane.outcome.moves, ...moves } } };
}

/** Its speed ripple, from a cause with a period. */
export function withRipple(
  lane: JudgedLane,
  peak: number,
  cause: string | null = null,
  period = 0.01,
): JudgedLane {
  const { accuracy } = lane.outcome;
  if ('trip' in accuracy.ripple) throw new Error('the sample scan trips');
  const ripple = { ...accuracy.ripple, peak, lines: [{ period, amplitude: peak, cause }] };
  return { ...lane, outcome: { ...lane.outcome, accuracy: { ...accuracy, ripple } } };
}

/** Energy of a cycle, everything else of it as it was. */
export function withEnergy(lane: JudgedLane, drawn: number): JudgedLane {
  const { accuracy } = lane.outcome;
  const energy = { ...accuracy.energy, drawn, returned: 0 };
  return { ...lane, outcome: { ...lane.outcome, accuracy: { ...accuracy, energy } } };
}

/** The samples of its day, changed. */
export function withDay(lane: JudgedLane, change: (sample: LapseSample) => LapseSample): JudgedLane {
  const { heat } = lane.outcome;
  const asSet = { ...heat.asSet, samples: heat.asSet.samples.map(change) };
  return { ...lane, outcome: { ...lane.outcome, heat: { ...heat, asSet } } };
}
