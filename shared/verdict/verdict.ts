import type { Kit } from '../scene.ts';
import type { Job } from '../study/job.ts';
import type { JudgedLane, Judgement, Verdict } from '../study/verdict.ts';
import { choiceSentence } from './choice.ts';
import { fairnessSentence } from './fairness.ts';
import { searchFlips } from './flips.ts';
import { nearest, RULE, rank } from './ranking.ts';
import { sentencesOn } from './sentences.ts';
import { tableOf } from './table.ts';
import { unseenSentences } from './unseen.ts';
import { named, sentence } from './words.ts';

/** What the figures say of one to four lanes on a job, and what would change the choice. */
export function verdict(
  job: Job,
  lanes: readonly JudgedLane[],
  kits: Readonly<Record<string, Kit>>,
): Verdict {
  const search = searchFlips(job, lanes, kits);
  let step = search.next();
  while (!step.done) step = search.next();
  return { ...judge(job, lanes), ...step.value };
}

/** The table, the choice, and what stands out. */
export function judge(job: Job, lanes: readonly JudgedLane[]): Judgement {
  const standing = rank(job, lanes);
  const toldInChoice = standing.ranking.length === 0 ? nearest(standing.shortfalls) : [];
  return {
    rows: tableOf(job, lanes, standing.shortfalls),
    ranking: standing.ranking,
    first: standing.first,
    shortfalls: standing.shortfalls.map((each) => each.map(({ text }) => sentence(text))),
    choice: choiceSentence(job, lanes, standing),
    rule: RULE,
    fairness: lanes.length > 0 ? fairnessSentence(job, lanes) : '',
    sentences: [
      ...lanes.flatMap((lane, place) => {
        const texts = standing.shortfalls[place]!.map(({ text }) => text);
        if (toldInChoice.includes(place)) return [];
        return texts.length > 0 ? sentence(`${named(lane)} does not do the job: ${texts.join('; ')}`) : [];
      }),
      ...unseenSentences(job, lanes),
      ...sentencesOn(job, lanes, standing),
    ],
  };
}
