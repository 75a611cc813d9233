import { at } from '../core/at.ts';
import type { Presets } from '../core/scene.ts';
import type { Job } from '../study/job.ts';
import { choiceSentence } from './choice.ts';
import { fairnessSentence } from './fairness.ts';
import { findFlips } from './flips.ts';
import type { JudgedCandidate, Judgement, Verdict } from './judgement.ts';
import { nearest, rank, ruleOf } from './ranking.ts';
import { sentencesOn } from './sentences.ts';
import { tableOf } from './table.ts';
import { named, numberWord, sentence } from './text.ts';
import { unseenSentences } from './unseen.ts';

/** What the figures say of one to four candidates on a job, and what would change the choice. */
export function verdict(job: Job, candidates: readonly JudgedCandidate[], presets: Presets): Verdict {
  return { ...judge(job, candidates), ...findFlips(job, candidates, presets) };
}

/** More reasons than these nobody reads in a sentence; the table has them all. */
const MAX_REASONS = 3;

function firstOf(reasons: readonly string[]): string {
  const left = reasons.length - MAX_REASONS;
  if (left <= 1) return reasons.join('; ');
  return `${reasons.slice(0, MAX_REASONS).join('; ')}; and for ${numberWord(left)} more reasons`;
}

/** The table, the choice, and what stands out. */
export function judge(job: Job, candidates: readonly JudgedCandidate[]): Judgement {
  const standing = rank(job, candidates);
  const toldInChoice = standing.ranking.length === 0 ? nearest(standing.shortfalls) : [];
  return {
    rows: tableOf(job, candidates, standing.shortfalls),
    ranking: standing.ranking,
    first: standing.first,
    shortfalls: standing.shortfalls.map((each) => each.map(({ text }) => sentence(text))),
    choice: choiceSentence(job, candidates, standing),
    rule: ruleOf(job),
    fairness: candidates.length > 0 ? fairnessSentence(job, candidates) : '',
    sentences: [
      ...candidates.flatMap((candidate, place) => {
        const texts = at(standing.shortfalls, place).map(({ text }) => text);
        if (toldInChoice.includes(place)) return [];
        return texts.length > 0 ? sentence(`${named(candidate)} does not do the job: ${firstOf(texts)}`) : [];
      }),
      ...unseenSentences(job, candidates),
      ...sentencesOn(job, candidates, standing),
    ],
  };
}
