import type { Scene } from '../core/scene.ts';
import type { Accuracy, PositioningTest, TestResult } from '../protocol/accuracy.ts';
import type { MoveFigures, Trip } from '../protocol/axis.ts';
import type { TimeLapse } from '../protocol/timeLapse.ts';
import type { Job } from './job.ts';

/** What the moves of the job came to in a run of the tuned axis; the worst of all moves. SI, shares of 1. */
export interface MoveOutcome {
  readonly trip: Trip | null;
  /** Null: some move did not settle. */
  readonly settlingTime: number | null;
  readonly peakError: number;
  readonly rmsError: number;
  readonly peakForce: number;
  readonly rmsForce: number;
  readonly peakCurrent: number;
  readonly rmsCurrent: number;
  readonly currentHeadroom: number;
  readonly voltageHeadroom: number;
  readonly moves: readonly MoveFigures[];
}

/** Everything that simulation found of one candidate. */
export interface CandidateOutcome {
  readonly moves: MoveOutcome;
  /** Of the day that the job asks for. */
  readonly heat: TimeLapse;
  readonly accuracy: Accuracy;
  /** The loop as tuned: what it was tuned to, and what it has. */
  readonly peakSensitivity: number;
  readonly crossover: number | null;
}

/** What was found of the same axis under another job: parts of it hold again. */
export interface KnownOutcome {
  readonly job: Job;
  readonly outcome: CandidateOutcome;
}

export interface CandidateProgress {
  readonly stage: string;
  /** 0 to 1. */
  readonly share: number;
}

/** Of the tests of a candidate, those that are run as cold as the room. */
export interface ColdTests extends Omit<Accuracy, 'positioning' | 'energy'> {
  readonly positioning: TestResult<PositioningTest>;
}

/** And those at the end of its day: positioning warm and, where a nut wears, worn. */
export type WarmTests = Pick<Accuracy, 'positioning' | 'energy'>;

/** What does not wait for the tests of the cold axis: the moves, the loop, the day and what follows from it. */
export interface DayOutcome extends Omit<CandidateOutcome, 'accuracy'> {
  readonly warm: WarmTests;
}

/** Both halves of a candidate. */
export function joinedOutcome({ warm, ...day }: DayOutcome, cold: ColdTests): CandidateOutcome {
  return { ...day, accuracy: { ...cold, ...warm, positioning: [cold.positioning, ...warm.positioning] } };
}

/**
 * The commands of a candidate worker: a half of a candidate each, about equally long, so that two workers share it. Each keeps the worker
 * busy until it is through; ending the worker cancels it. Of what is known only that is done again which the job changes.
 */
export interface CandidateCommands {
  /** @throws RangeError when a cycle of the job is too long to be run */
  evaluateDay(
    job: Job,
    scene: Scene,
    onProgress: (progress: CandidateProgress) => void,
    known: KnownOutcome | null,
  ): DayOutcome;
  evaluateCold(
    job: Job,
    scene: Scene,
    onProgress: (progress: CandidateProgress) => void,
    known: KnownOutcome | null,
  ): ColdTests;
}
