import { inUnit, ranged } from '../core/format.ts';
import { alikeIn } from '../sizing/comparableNote.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';
import { listed } from './text.ts';

/** Why the comparison is a fair one, and what about it is not. */
export function fairnessSentence({ values }: Job, candidates: readonly JudgedCandidate[]): string {
  const same = `Every drive does the same job with the same payload, ${ranged(values.payload, 'kg')}.`;
  return [
    same,
    ...tuningSentence(values.peakSensitivity, candidates),
    alikeIn(values.comparableBy, candidates),
  ].join(' ');
}

/** To what the drives are tuned; those that the sizing rules out are not. */
function tuningSentence(limit: number, candidates: readonly JudgedCandidate[]): string[] {
  const tuned = candidates.filter(({ sizing }) => sizing.passes);
  const [letters, others] = [tuned, candidates.filter(({ sizing }) => !sizing.passes)].map((each) =>
    each.map(({ letter }) => letter),
  ) as [string[], string[]];
  const peaks = tuned.map(({ outcome }) => outcome.peakSensitivity);
  const who = others.length === 0 ? 'Each' : listed(letters);
  const isOrAre = others.length === 0 || tuned.length === 1 ? 'is' : 'are';
  return [
    ...(tuned.length > 0
      ? [
          `${who} ${isOrAre} tuned to a peak sensitivity of at most ${inUnit(limit, '')} (reached: ${span(peaks, (peak) => inUnit(peak, ''))}).`,
        ]
      : []),
    ...(others.length > 0
      ? [
          `${listed(others)}, which the sizing rules out, ${others.length > 1 ? 'run' : 'runs'} with start gains by rule.`,
        ]
      : []),
  ];
}

function span(values: readonly number[], text: (value: number) => string): string {
  const [min, max] = [text(Math.min(...values)), text(Math.max(...values))];
  return min === max ? min : `${min} to ${max}`;
}
