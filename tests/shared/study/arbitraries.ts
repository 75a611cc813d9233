import fc from 'fast-check';
import { PRESETS } from '../../../scenes/index.ts';
import type { RowValue } from '../../../shared/core/parameters/row.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { maxMotors } from '../../../shared/core/preset.ts';
import { tuningOf } from '../../../shared/core/tuning.ts';
import { moveLimits } from '../../../shared/motion/moveLimits.ts';
import { moveTimeRange } from '../../../shared/motion/moveTimes.ts';
import type { CandidateChoice, Study } from '../../../shared/study/candidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { checkCandidate } from '../../../shared/study/checkCandidate.ts';
import { checkJob } from '../../../shared/study/checkJob.ts';
import { DATASHEET_NAMES } from '../../../shared/study/datasheet.ts';
import {
  defaultJobValues,
  JOB_ENTRIES,
  type Job,
  type JobEntry,
  type JobValues,
  jobRow,
} from '../../../shared/study/job.ts';
import { anyText, anyValue, share } from '../core/arbitraries.ts';

const anyMove = fc.record({ to: share, time: share, dwell: share });
type DrawnMove = typeof anyMove extends fc.Arbitrary<infer M> ? M : never;

/** A legal job with values from all over their ranges: what would contradict those before it stays as it was. */
export const anyJob: fc.Arbitrary<Job> = fc
  .record({
    title: anyText(1, 60),
    values: fc.tuple(...JOB_ENTRIES.map((name) => anyValue(jobRow(name)))),
    // In any order, so that no value always keeps another from its range.
    order: fc.shuffledSubarray([...JOB_ENTRIES], { minLength: JOB_ENTRIES.length }),
    moveTime: share,
    moves: fc.option(fc.array(anyMove, { minLength: 2, maxLength: 5 })),
  })
  .map(({ title, values, order, moveTime, moves }) => {
    const drawn = Object.fromEntries(JOB_ENTRIES.map((name, index) => [name, values[index]]));
    return jobOf(title, drawn as Record<JobEntry, RowValue>, order, moveTime, moves);
  });

function jobOf(
  title: string,
  drawn: Readonly<Record<JobEntry, RowValue>>,
  order: readonly JobEntry[],
  moveTime: number,
  moves: readonly DrawnMove[] | null,
): Job {
  let job: Job = { title, values: defaultJobValues(), moves: [] };
  const tryOut = (values: JobValues, list = job.moves) => {
    const attempt = { ...job, values, moves: list };
    if (checkJob(attempt).job) job = attempt;
  };
  for (const name of order) {
    const values: JobValues = { ...job.values, [name]: drawn[name] };
    const { min, max } = moveTimeRange(values.stroke);
    const timely = name === 'stroke' ? { moveTime: min * (Math.min(max, 60) / min) ** moveTime } : {};
    tryOut({ ...values, ...timely });
  }
  if (moves) tryOut({ ...job.values, motion: 'move list' }, listOf(moves, job.values.travel));
  return job;
}

function listOf(moves: readonly DrawnMove[], travel: number): Job['moves'] {
  const positions = moves.map(({ to }) => (to - 0.5) * travel);
  return moves.map(({ time, dwell }, index) => {
    const to = positions[index] ?? 0;
    const distance = Math.abs(to - (positions.at(index - 1) ?? 0));
    const { min, max } = moveTimeRange(distance);
    return { to, ...moveLimits(distance, min * (max / min) ** (0.01 + 0.98 * time)), dwell };
  });
}

const anyCandidate = fc.record({
  preset: fc.constantFrom(...Object.entries(PRESETS)),
  motors: share,
  own: fc.option(fc.tuple(...DATASHEET_NAMES.map(() => fc.option(share, { freq: 2 }))), { freq: 2 }),
  gains: fc.option(fc.record({ Kp: share, filter1: fc.constantFrom('off', 'notch') }), { freq: 2 }),
});
type DrawnCandidate = typeof anyCandidate extends fc.Arbitrary<infer C> ? C : never;

/** A legal study: any job, one to four drives, some with values of their own, some tuned. */
export const anyStudy: fc.Arbitrary<Study> = fc
  .record({ job: anyJob, candidates: fc.array(anyCandidate, { minLength: 1, maxLength: 4 }) })
  .map(({ job, candidates }) => ({ job, candidates: candidates.map((each) => choiceOf(each, job)) }));

function choiceOf({ preset: [id, preset], motors, own, gains }: DrawnCandidate, job: Job): CandidateChoice {
  let choice: CandidateChoice = {
    preset: id,
    motorCount: 1 + Math.round(motors * (maxMotors(preset) - 1)),
    own: {},
    gains: null,
  };
  for (const [index, name] of DATASHEET_NAMES.entries()) {
    const value = preset.parameters[name];
    const at = own?.[index];
    if (value === undefined || at === undefined || at === null) continue;
    const attempt = { ...choice, own: { ...choice.own, [name]: value * (0.7 + 0.6 * at) } };
    if ('candidate' in checkCandidate(attempt, job, PRESETS)) choice = attempt;
  }
  if (gains === null) return choice;
  const tuning: ParameterChanges = tuningOf(candidateScene(job, choice, PRESETS).parameters);
  return { ...choice, gains: { ...tuning, Kp: 1e5 * (1 + gains.Kp), filter1: gains.filter1 } };
}
