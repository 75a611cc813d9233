import type { Kit } from '../scene.ts';
import { sizeLane } from '../sizing/sizeLane.ts';
import type { Job } from '../study/job.ts';
import { laneScene } from '../study/laneScene.ts';
import type { JudgedLane, Verdict } from '../study/verdict.ts';
import { choiceSentence } from './choice.ts';
import { fairnessSentence } from './fairness.ts';
import { flipsOf, type Resize } from './flips.ts';
import { nearest, RULE, rank } from './ranking.ts';
import { sentencesOn } from './sentences.ts';
import { tableOf } from './table.ts';
import { named, sentence } from './words.ts';

/**
 * What the figures say of one to four lanes on a job: the table, the choice, what stands out, and what would change it. Without `kits`
 * nothing can be calculated anew, and only limits are looked at for changes of the choice.
 */
export function verdict(
  job: Job,
  lanes: readonly JudgedLane[],
  kits: Readonly<Record<string, Kit>> | null = null,
): Verdict {
  const standing = rank(job, lanes);
  const toldInChoice = standing.ranking.length === 0 ? nearest(standing.shortfalls) : [];
  const { flips, note } = flipsOf(job, lanes, standing, kits && resizeWith(kits));
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
      ...sentencesOn(job, lanes, standing),
    ],
    flips,
    flipNote: note,
  };
}

function resizeWith(kits: Readonly<Record<string, Kit>>): Resize {
  return (job, { choice }) => sizeLane(job, laneScene(job, { ...choice, gains: null }, kits));
}
