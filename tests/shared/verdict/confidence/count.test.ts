import { expect, it } from 'vitest';
import { Count } from '../../../../shared/verdict/confidence/count.ts';
import { countedSentence } from '../../../../shared/verdict/confidence/text.ts';
import type { Standing } from '../../../../shared/verdict/ranking.ts';
import { recordedCandidates } from '../../study/recordedStudy.ts';

const CANDIDATES = recordedCandidates();

const standing = (first: readonly number[], changes: Partial<Standing> = {}): Standing => ({
  ranking: first,
  first,
  decidedBy: null,
  behindBy: CANDIDATES.map(() => null),
  shortfalls: CANDIDATES.map(() => []),
  ...changes,
});
const costsMore = standing([1], { behindBy: ['total', null, null, null] });
const slow = standing([1], { behindBy: ['inPlace', null, null, null] });
const tooWarm = standing([], {
  shortfalls: [[{ row: 'growth', text: '', factor: 2 }], [], [], []],
});

/** Twenty jobs by hand: 14 in which A is first alone, 2 in which it shares, 3 with B, of which 2 for its cost, 1 with none. */
const HAND = [
  ...Array.from({ length: 14 }, () => standing([0])),
  standing([0, 2]),
  standing([0, 1]),
  costsMore,
  slow,
  costsMore,
  tooWarm,
];

function counted(choice: readonly number[], standings: readonly Standing[]) {
  const count = new Count(choice);
  for (const each of standings) count.add(CANDIDATES, each);
  return count.counted();
}

it('counts twenty jobs as they are counted by hand: first and shared first stays, the others by who is first then', () => {
  const { drawn, stays, ways } = counted([0], HAND);
  expect(drawn).toBe(20);
  expect(stays.share).toBe(16 / 20);
  // Wilson (1927) by hand: (0.8 + 1.96²/40 ± 1.96 √(0.8·0.2/20 + 1.96²/1600))/(1 + 1.96²/20) = 0.584 and 0.919.
  expect(stays.low).toBeCloseTo(0.584, 3);
  expect(stays.high).toBeCloseTo(0.919, 3);
  expect(ways.map(({ letters, stays, count }) => [letters.join(), stays, count])).toEqual([
    ['A', true, 16],
    ['B', false, 3],
    ['', false, 1],
  ]);
  expect(ways[1]?.reason).toBe('A then costs more by an amount that counts');
  expect(ways[2]?.reason).toMatch(/^A has too large a thermal growth/);
});

it('says it in one sentence', () => {
  expect(countedSentence(counted([0], HAND), ', by calculation')).toMatch(
    /^Of 20 jobs drawn within these ranges, by calculation, the choice stays A in 80\.0 % \(95 % confidence interval 58\.4 to 91\.9 %\); otherwise it is B in 15\.0 % \(.+, mostly because A then costs more by an amount that counts\) and no drive does the job in 5\.0\d? % \(.+ thermal growth at the tool\)\.$/,
  );
  expect(countedSentence(counted([0], HAND.slice(0, 14)), '')).toMatch(
    /the choice stays A in all of them \(/,
  );
  expect(countedSentence(counted([], [tooWarm, tooWarm]), '')).toMatch(
    /still no drive does the job in any of them \(/,
  );
  expect(countedSentence(counted([], [tooWarm, tooWarm, costsMore]), '')).toMatch(
    /still no drive does the job in 66\.7 % \(.+\); otherwise it is B in 33\.3 % \(/,
  );
});
