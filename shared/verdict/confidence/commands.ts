import type { Job } from '../../study/job.ts';
import type { JudgedCandidate } from '../judgement.ts';
import type { Confidence } from './confidence.ts';
import type { ConfidenceAsked } from './findConfidence.ts';

/** The command of a worker that draws jobs. */
export interface ConfidenceCommands {
  /**
   * Keeps the worker busy until it is through; ending the worker cancels it. `onFound` hears what the draws come to on the way; the whole
   * is the answer, which may overtake what is told.
   */
  confidence(
    job: Job,
    candidates: readonly JudgedCandidate[],
    asked: ConfidenceAsked,
    onFound: (confidence: Confidence) => void,
  ): Confidence | null;
}
