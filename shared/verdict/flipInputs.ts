import type { Job, JobEntry } from '../study/job.ts';
import type { CandidateOutcome } from '../study/outcome.ts';
import type { JudgedCandidate } from './judgement.ts';

/** What is known when one input of the job is another one. */
export interface FlipInput {
  readonly input: JobEntry;
  /** calculation: the sizing is worked out anew. held: only limits move, or a part of what was simulated is looked at. */
  readonly by: 'calculation' | 'held';
  /** Whether the sizing of a candidate depends on it. */
  readonly sizingFollows: boolean;
  readonly appliesTo: (job: Job) => boolean;
  /**
   * What the simulated figures are then: one outcome, or two when all that is known is that they lie between. Null where they are not
   * known.
   */
  readonly outcomes: (
    candidate: JudgedCandidate,
    value: number,
    job: Job,
  ) => readonly [CandidateOutcome, CandidateOutcome] | null;
}

const always = () => true;
const backAndForth = ({ values }: Job) => values.motion === 'back and forth';
const asFound = ({ outcome }: JudgedCandidate) => [outcome, outcome] as const;

const calculated = (input: JobEntry, appliesTo: FlipInput['appliesTo'] = always): FlipInput => ({
  input,
  by: 'calculation',
  sizingFollows: true,
  appliesTo,
  outcomes: asFound,
});

const held = (
  input: JobEntry,
  outcomes: FlipInput['outcomes'] = asFound,
  appliesTo: FlipInput['appliesTo'] = always,
): FlipInput => ({
  input,
  by: 'held',
  sizingFollows: false,
  appliesTo,
  outcomes,
});

/** Every input that is varied, the load first. */
export const FLIP_INPUTS: readonly FlipInput[] = [
  calculated('payload'),
  calculated('moveTime', backAndForth),
  calculated('stroke', backAndForth),
  calculated('dwell', backAndForth),
  calculated('processForce', ({ values }) => values.process !== 'none'),
  calculated('busVoltage'),
  calculated('ambient'),
  { ...held('window', inWindow), sizingFollows: true },
  held('smallestStep', asFound, ({ values }) => values.smallestStep > 0),
  held('rippleLimit', asFound, ({ values }) => values.rippleLimit > 0),
  held('growthLimit', asFound, ({ values }) => values.growthLimit > 0),
  held('dailyTime', untilTime),
  held('years'),
  held('energyPrice'),
  held('priceHigh'),
  held('priceMedium'),
];

/**
 * In a wider window an axis settles no later than in the narrow one, and at once where its error never leaves it. How much later it
 * settles in a narrower one was not simulated.
 */
function inWindow(
  { outcome }: JudgedCandidate,
  window: number,
  job: Job,
): readonly [CandidateOutcome, CandidateOutcome] | null {
  if (window < job.values.window) return null;
  const { moves } = outcome;
  const settling = (settlingTime: number | null): CandidateOutcome => ({
    ...outcome,
    moves: { ...moves, settlingTime },
  });
  if (moves.trip || window === job.values.window) return [outcome, outcome];
  if (moves.peakError <= window) return [settling(0), settling(0)];
  return [settling(0), outcome];
}

/** A shorter day is the beginning of the one that was run; a longer one was not. */
function untilTime(
  { outcome }: JudgedCandidate,
  time: number,
  job: Job,
): readonly [CandidateOutcome, CandidateOutcome] | null {
  if (time > job.values.dailyTime) return null;
  const { asSet } = outcome.heat;
  const passed = <T>(at: number | null, what: T): T | null => (at !== null && at <= time ? what : null);
  const shorter: CandidateOutcome = {
    ...outcome,
    heat: {
      ...outcome.heat,
      asSet: {
        ...asSet,
        samples: asSet.samples.filter((sample) => sample.time <= time),
        trip: passed(asSet.trip?.time ?? null, asSet.trip),
        hotTime: passed(asSet.hotTime, asSet.hotTime),
        overloadTime: passed(asSet.overloadTime, asSet.overloadTime),
      },
    },
  };
  return [shorter, shorter];
}
