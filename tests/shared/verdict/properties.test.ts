import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import type { JudgedCandidate, Verdict } from '../../../shared/verdict/judgement.ts';
import { rank } from '../../../shared/verdict/ranking.ts';
import { judge, verdict } from '../../../shared/verdict/verdict.ts';
import { recordedCandidates, recordedDrives, recordedJob } from '../study/recordedStudy.ts';
import { relettered, withDay, withEnergy, withMoves, withRipple } from './candidates.ts';

const job = recordedJob();
const candidates = recordedCandidates(job);
const { A } = recordedDrives(job);

/** Every order of some things, the given one first. */
function orders<T>(items: readonly T[]): T[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((item, k) =>
    orders([...items.slice(0, k), ...items.slice(k + 1)]).map((rest) => [item, ...rest]),
  );
}

/** All that is said, with every candidate called by a mark of its own. */
function facts(found: Verdict, judged: readonly JudgedCandidate[], marks: readonly string[]): string[] {
  const said = [
    found.choice,
    found.fairness,
    ...found.sentences,
    ...found.flips.map(({ sentence }) => sentence),
  ];
  return said
    .map((label) => {
      let text = label;
      judged.forEach((candidate, k) => {
        text = text.replaceAll(`${candidate.letter} (${candidate.title})`, `<${marks[k]}>`);
      });
      judged.forEach((candidate, k) => {
        text = text.replace(
          new RegExp(`(?<![°\\w])${candidate.letter}\\b(?=:| tie|,| and| \\()`, 'g'),
          `<${marks[k]}>`,
        );
      });
      // A list of candidates stands in the order of the candidates.
      return text
        .split(/[ ,;:.()]+/)
        .sort()
        .join(' ');
    })
    .sort();
}

describe('what is said', () => {
  const marks = ['one', 'two', 'three', 'four'];
  const first = facts(verdict(job, candidates, PRESETS), candidates, marks);

  it('follows the candidates in whatever order they stand', () => {
    for (const order of orders([0, 1, 2, 3]).filter((_, k) => k % 8 === 3)) {
      const shuffled = order.map((from, to) => relettered(at(candidates, from), at('ABCD', to)));
      const said = facts(
        verdict(job, shuffled, PRESETS),
        shuffled,
        order.map((from) => at(marks, from)),
      );
      expect(said).toEqual(first);
    }
  });

  it('does not depend on what a drive is called or how it looks', () => {
    const disguised = candidates.map((candidate, k) => {
      const renamed = relettered(candidate, candidate.letter, `Drive number ${k + 1}`);
      const driveType = at(['screw', 'flat', 'u-channel', 'tubular'] as const, k);
      return { ...renamed, scene: { ...renamed.scene, driveType } };
    });
    expect(facts(verdict(job, disguised, PRESETS), disguised, marks)).toEqual(first);
  });
});

describe('identical candidates', () => {
  const twins = ['A', 'B', 'C'].map((letter) => relettered(A, letter));
  const found = judge(job, twins);

  it('share first place and every row', () => {
    expect(found.first).toEqual([0, 1, 2]);
    const marks = found.rows.flatMap(({ cells }) => cells.map(({ mark }) => mark));
    expect(marks).not.toContain('best');
    expect(
      at(
        found.rows.filter(({ id }) => id === 'energy'),
        0,
      ).cells.map(({ mark }) => mark),
    ).toEqual(['tie', 'tie', 'tie']);
  });

  it('are told to be alike', () => {
    expect(found.sentences).toEqual(['A, B and C tie in every figure compared.']);
    expect(found.choice).toMatch(
      /meet every requirement of the job, and no figure that counts separates them .*: choose any of them\.$/,
    );
  });
});

describe('a candidate that is worse in everything', () => {
  /** Everything that counts made worse by a share. */
  function worse(candidate: JudgedCandidate, share: number): JudgedCandidate {
    const { moves, accuracy } = candidate.outcome;
    if ('trip' in accuracy.ripple || 'trip' in accuracy.energy) throw new Error('the sample trips');
    const grown = 1 + share;
    const slow = withMoves(candidate, {
      settlingTime: (moves.settlingTime ?? 0) * grown + 0.005,
      peakError: moves.peakError * grown,
      rmsCurrent: moves.rmsCurrent * grown,
    });
    const rough = withRipple(slow, accuracy.ripple.peak * grown);
    const { drawn, returned } = accuracy.energy;
    const hungry = withEnergy(rough, (drawn - returned) * grown);
    return withDay(hungry, (sample) => ({
      ...sample,
      growth: sample.growth * grown,
      windingPeak: sample.windingPeak + 20 * share,
      electricPower: sample.electricPower * grown,
    }));
  }

  it.each([0.05, 0.3, 1, 4])('by %d is never chosen, beside whomever', (share) => {
    for (const candidate of candidates) {
      for (const others of [[], candidates.filter((each) => each !== candidate).slice(0, 2)]) {
        const judged = [worse(candidate, share), candidate, ...others].map((each, k) =>
          relettered(each, at('ABCD', k)),
        );
        const { first, ranking } = rank(job, judged);
        expect(first).not.toContain(0);
        if (ranking.includes(0)) expect(ranking.indexOf(0)).toBeGreaterThan(ranking.indexOf(1));
        if (others.length > 0 || ranking.length > 0) continue;
        expect(judge(job, judged).choice).toContain('B (');
      }
    }
  });
});

describe('few candidates', () => {
  it('one is judged by itself, nothing in it is best', () => {
    const found = verdict(job, [A], PRESETS);
    expect(found.choice).toBe(`A (${A.title}) meets every requirement of the job.`);
    expect(found.sentences).toEqual([]);
    expect(
      found.rows.flatMap(({ cells }) => cells.map(({ mark }) => mark)).every((mark) => mark === null),
    ).toBe(true);
  });

  it('none is not judged', () => {
    const found = verdict(job, [], PRESETS);
    expect(found).toMatchObject({
      choice: 'No drive has been simulated yet.',
      sentences: [],
      flips: [],
      first: [],
    });
  });
});
