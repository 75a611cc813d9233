import { inUnit, ranged } from '../core/format.ts';
import { alikeIn } from '../sizing/comparableNote.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';

/** Why the comparison is a fair one, and what about it is not. */
export function fairnessSentence({ values }: Job, candidates: readonly JudgedCandidate[]): string {
  const peaks = candidates.map(({ outcome }) => outcome.peakSensitivity);
  const same =
    `Every drive does the same job with the same payload, ${ranged(values.payload, 'kg')}, and is tuned to the same peak sensitivity, ` +
    `${inUnit(values.peakSensitivity, '')} (as tuned: ${span(peaks, (peak) => inUnit(peak, ''))}).`;
  return `${same} ${alikeIn(values.comparableBy, candidates)}`;
}

function span(values: readonly number[], text: (value: number) => string): string {
  const [min, max] = [text(Math.min(...values)), text(Math.max(...values))];
  return min === max ? min : `${min} to ${max}`;
}
