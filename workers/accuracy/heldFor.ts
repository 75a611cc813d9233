import type { Job, JobEntry } from '../../shared/study/job.ts';
import type { CandidateOutcome, KnownOutcome } from '../../shared/study/outcome.ts';

/** What is known, if these entries of the job are what they were then; null: it does not hold any more. */
export function heldFor(
  job: Job,
  known: KnownOutcome | null,
  ...entries: readonly JobEntry[]
): CandidateOutcome | null {
  return known && entries.every((entry) => known.job.values[entry] === job.values[entry])
    ? known.outcome
    : null;
}
