import type { Scene } from '../core/scene.ts';
import type { Accuracy } from '../protocol/accuracy.ts';
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

/** The command of a candidate worker. */
export interface CandidateCommands {
  /**
   * Keeps the worker busy until it is through; ending the worker cancels it. Of what is known only that is done again which the job changes.
   * @throws RangeError when a cycle of the job is too long to be run
   */
  evaluate(
    job: Job,
    scene: Scene,
    onProgress: (progress: CandidateProgress) => void,
    known: KnownOutcome | null,
  ): CandidateOutcome;
}
