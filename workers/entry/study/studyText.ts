import type { Job } from '../../../shared/study/job.ts';
import type { Confidence } from '../../../shared/verdict/confidence/confidence.ts';
import { confidenceSentence, rangesText, scopeText } from '../../../shared/verdict/confidence/text.ts';
import type { JudgedCandidate, Verdict } from '../../../shared/verdict/judgement.ts';
import type { LeftOut } from './simulateStudy.ts';

/** The printed result of a study: every figure of every candidate, what falls short in brackets, then the choice and why. */
export function studyText(
  job: Job,
  candidates: readonly JudgedCandidate[],
  leftOut: readonly LeftOut[],
  found: Verdict,
  confidence: Confidence | null,
): string {
  const head = ['', ...candidates.map(({ letter }) => letter), 'asked'];
  const rows = found.rows.map(({ label, cells, asked }) => [
    label,
    ...cells.map(({ text, fails }) => (fails ? `(${text})` : text)),
    asked ?? '',
  ]);
  const widthOf = (column: number) => Math.max(...[head, ...rows].map((row) => row[column]?.length ?? 0));
  const lines = [head, ...rows].map(([label = '', ...cells]) =>
    [label.padEnd(widthOf(0)), ...cells.map((cell, k) => cell.padStart(widthOf(k + 1)))].join('  '),
  );
  return [
    job.title,
    ...candidates.map(({ letter, title }) => `  ${letter}  ${title}`),
    ...leftOut.map(({ letter, title, reason }) => `  ${letter}  ${title}: not simulated. ${reason}`),
    '',
    ...lines.map((line) => `  ${line}`.trimEnd()),
    '',
    found.choice,
    ...(confidence
      ? [confidenceSentence(confidence), `Ranges: ${rangesText(confidence.ranges)}. ${scopeText(confidence)}`]
      : []),
    ...found.sentences,
    ...found.flips.map(({ sentence }) => sentence),
  ].join('\n');
}
