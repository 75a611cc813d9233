import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { at as elementAt, present } from '../../../shared/core/at.ts';
import { linear, log } from '../../../shared/core/parameters/row.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import type { Job } from '../../../shared/study/job.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';
import { rank } from '../../../shared/verdict/ranking.ts';
import { firstChange } from '../../../shared/verdict/search.ts';
import { verdict } from '../../../shared/verdict/verdict.ts';
import { recordedCandidates, recordedDrives, recordedJob } from '../study/recordedStudy.ts';
import { relettered, withDay, withEnergy, withMoves } from './candidates.ts';

const job = recordedJob();

/** Who comes first on another job: the calculation done again from scratch, what was simulated held. */
function firstOn(other: Job, candidates: readonly JudgedCandidate[]): readonly number[] {
  const anew = candidates.map((candidate) => ({
    ...candidate,
    sizing: sizeCandidate(other, candidateScene(other, candidate.choice, PRESETS)),
  }));
  return rank(other, anew).first;
}

describe('what would change the choice', () => {
  const candidates = recordedCandidates(job);
  const { flips, first } = verdict(job, candidates, PRESETS);
  const withInput = (input: string, value: number): Job => ({
    ...job,
    values: { ...job.values, [input]: value },
  });

  it('is found for some inputs, six at most, and none of them farther off than a factor of two', () => {
    expect(flips.length).toBeGreaterThan(0);
    expect(flips.length).toBeLessThanOrEqual(6);
    for (const { from, to } of flips) expect(Math.abs(Math.log2(to / from))).toBeLessThanOrEqual(1.001);
  });

  it.each(flips.map((flip) => [flip.input, flip] as const))(
    '%s: just before it all is as it was, just after it is not',
    (input, flip) => {
      const step = 2e-3 * (flip.to - flip.from > 0 ? 1 : -1) * Math.abs(flip.to);
      expect(firstOn(withInput(input, flip.to - step), candidates)).toEqual(first);
      expect(firstOn(withInput(input, flip.to + step), candidates)).not.toEqual(first);
    },
  );

  it('says what was calculated and what was held', () => {
    for (const { sentence } of flips) expect(sentence).toMatch(/[Ww]ith the simulated figures held\.$/);
    const held = ['window', 'rippleLimit', 'growthLimit', 'dailyTime'];
    for (const { input, sentence } of flips)
      expect(sentence.includes('By calculation'), input).toBe(!held.includes(input));
  });
});

describe('a wider window', () => {
  const { A } = recordedDrives(job);
  const late = withEnergy(
    withMoves(relettered(A, 'B'), { settlingTime: null, peakError: 1.6 * job.values.window }),
    1,
  );

  it('lets in whom it holds from the first sample on', () => {
    const candidates = [withMoves(A, { trip: { kind: 'divergence', time: 0 } }), late];
    const { flips } = verdict(job, candidates, PRESETS);
    expect(flips[0]).toMatchObject({ input: 'window' });
    expect(elementAt(flips, 0).to / job.values.window).toBeCloseTo(1.6, 2);
  });

  it('tells nothing where settling in it was not simulated', () => {
    const { flips } = verdict(
      job,
      [A, withMoves(relettered(A, 'B'), { settlingTime: 0.05, peakError: 1 })],
      PRESETS,
    );
    expect(flips.filter(({ input }) => input === 'window')).toEqual([]);
  });
});

describe('a dearer effort', () => {
  // The first costs a little less, the second wastes less energy, the third is the hottest: with energy dear enough the second leads,
  // and it is not the winding, of which the third alone has a worse one, that put the first behind.
  it('names what put the former first behind, not what told the others apart', () => {
    const { A } = recordedDrives(job);
    const of = (letter: string, price: number, drawn: number, warmer: number) => {
      const moved = withDay(relettered(A, letter), (sample) => ({
        ...sample,
        electricPower: drawn,
        windingPeak: sample.windingPeak + warmer,
      }));
      return { ...moved, choice: { ...A.choice, price } };
    };
    const candidates = [of('A', 2000, 500, 0), of('B', 3300, 100, 10), of('C', 3300, 100, 20)];
    const { flips, first } = verdict(job, candidates, PRESETS);
    expect(first).toEqual([0]);
    const { sentence } = present(flips.find(({ input }) => input === 'energyPrice'));
    expect(sentence).toMatch(/B .*comes first, since A then costs more by an amount that counts\./);
  });
});

describe('when nothing changes it', () => {
  it('says so', () => {
    const { A } = recordedDrives(job);
    const stopped = withMoves(A, { trip: { kind: 'divergence', time: 0 } });
    const { flips, flipNote } = verdict(job, [stopped], PRESETS);
    expect(flips).toEqual([]);
    expect(flipNote).toContain('Nothing near: no tested change makes a drive meet the requirements');
  });
});

describe('the search', () => {
  const row = log('', 'mm', [1, 1000], 10, '');
  const step = (at: number) => (value: number) => ({ key: value < at ? 'before' : 'after' });

  it.each([11, 100, 876.5])('finds a step at %d to a part in a thousand', (at) => {
    const found = present(firstChange(row, 10, 1000, 'before', step(at)));
    expect(found.becomes.key).toBe('after');
    expect(found.at).toBeGreaterThanOrEqual(at);
    expect(found.at).toBeLessThanOrEqual(at * 1.001);
  });

  it('goes down, and through zero', () => {
    const below = (value: number) => ({ key: value < -3 ? 'after' : 'before' });
    const found = present(firstChange(linear('', '°C', [-20, 60], 22, ''), 22, -20, 'before', below));
    expect(found.at).toBeLessThan(-3);
    expect(found.at).toBeGreaterThan(-3.1);
  });

  it('stops where nothing is known', () => {
    expect(
      firstChange(row, 10, 1000, 'before', (value) => (value > 50 ? null : { key: 'before' })),
    ).toBeNull();
  });
});
