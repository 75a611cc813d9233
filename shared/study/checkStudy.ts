import { entryFailure, type Failure, isNot } from '../core/problem.ts';
import type { Presets } from '../core/scene.ts';
import { type CandidateChoice, MAX_CANDIDATES, type Study } from './candidate.ts';
import { checkCandidate, ofCandidate } from './checkCandidate.ts';
import { checkJob } from './checkJob.ts';
import { checkRanges } from './ranges.ts';

export type StudyResult = { readonly study: Study } | Failure;

/** What a study may be made of. */
interface StudyInput {
  readonly job: unknown;
  readonly candidates: unknown;
  readonly ranges?: unknown;
}

/** Checks a job, the candidates that shall do it, and ranges where they are given. Total: a legal study, or what is wrong. */
export function checkStudy(
  { job: jobInput, candidates: candidateInputs, ranges: rangeInputs }: StudyInput,
  presets: Presets,
): StudyResult {
  const { job, problems } = checkJob(jobInput);
  if (!job) return { problems };
  if (!Array.isArray(candidateInputs)) {
    return entryFailure('candidates', candidateInputs, isNot(candidateInputs, 'a list of candidates'));
  }
  if (candidateInputs.length < 1 || candidateInputs.length > MAX_CANDIDATES) {
    const message = `there are ${candidateInputs.length}. Give one to ${MAX_CANDIDATES}.`;
    return entryFailure('candidates', candidateInputs.length, message);
  }
  const candidates: CandidateChoice[] = [];
  for (const [index, input] of candidateInputs.entries()) {
    const checked = checkCandidate(input, job, presets);
    if ('problems' in checked) return { problems: checked.problems.map((each) => ofCandidate(index, each)) };
    candidates.push(checked.candidate);
  }
  if (rangeInputs === undefined) return { study: { job, candidates } };
  const checked = checkRanges(rangeInputs);
  return 'problems' in checked ? checked : { study: { job, candidates, ranges: checked.ranges } };
}
