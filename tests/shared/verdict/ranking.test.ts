import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { inSystem } from '../../../shared/core/unitSystem.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';
import { rank } from '../../../shared/verdict/ranking.ts';
import { judge } from '../../../shared/verdict/verdict.ts';
import { recordedDrives, recordedJob } from '../study/recordedStudy.ts';
import { relettered, withDay, withMoves, withRipple } from './candidates.ts';

const job = recordedJob();
const { A, B } = recordedDrives(job);
/** A again, as candidate B. */
const twin = relettered(A, 'B');

describe('the choice', () => {
  const byTime = { ...job, values: { ...job.values, decidedBy: 'time in position' as const } };
  const priced = (candidate: JudgedCandidate, price: number): JudgedCandidate => ({
    ...candidate,
    choice: { ...candidate.choice, price },
  });

  it('is of the candidate that costs least over the years counted', () => {
    const [dear, cheap] = [priced(A, 4100), priced(withMoves(twin, { settlingTime: 0.1 }), 3800)];
    expect(rank(job, [dear, cheap])).toMatchObject({ ranking: [1, 0], first: [1], decidedBy: 'total' });
  });

  it('is of the candidate that is in place soonest, where the job says so', () => {
    const slow = priced(withMoves(twin, { settlingTime: 0.1 }), 1);
    expect(rank(byTime, [slow, A])).toMatchObject({ ranking: [1, 0], first: [1], decidedBy: 'inPlace' });
    const level = withMoves(twin, { settlingTime: present(A.outcome.moves.settlingTime) + 0.003 });
    expect(rank(byTime, [A, priced(level, 1)])).toMatchObject({ ranking: [1, 0], decidedBy: 'total' });
  });

  it('is not made by a saving that nobody would pay for', () => {
    // 120 W less over 8 h on 250 days are 240 kWh, at 0.25 a kilowatt-hour 60 a year: 180 in three years, 300 in five.
    const thrifty = withDay(twin, (each) => ({ ...each, electricPower: each.electricPower - 120 }));
    const over = (years: number) => ({ ...job, values: { ...job.values, years } });
    expect(job.values.savingThatCounts).toBe(200);
    expect(rank(over(3), [A, thrifty]).decidedBy).not.toBe('total');
    expect(rank(over(5), [A, thrifty])).toMatchObject({ ranking: [1, 0], decidedBy: 'total' });
  });

  it('is of the coolest winding where cost and time tie', () => {
    const hot = withDay(twin, (sample) => ({ ...sample, windingPeak: sample.windingPeak + 5 }));
    expect(rank(job, [hot, A])).toMatchObject({ ranking: [1, 0], decidedBy: 'winding' });
  });

  it('leaves out whoever does not do the job, however quick', () => {
    const rough = withRipple(withMoves(twin, { settlingTime: 0 }), 2 * job.values.rippleLimit);
    const found = judge(job, [A, rough]);
    expect(found.ranking).toEqual([0]);
    expect(found.shortfalls[1]).toEqual([
      'Its speed ripple of the scan, 0.200 %, is above the 0.100 % that the job allows.',
    ]);
    expect(present(found.rows.find(({ id }) => id === 'ripple')).cells.map(({ fails }) => fails)).toEqual([
      false,
      true,
    ]);
  });

  it('lets pass what reads as its limit does, and nothing above', () => {
    const shortfalls = (times: number) =>
      judge(job, [withRipple(A, times * job.values.rippleLimit)]).shortfalls[0];
    expect(shortfalls(1.0049)).toEqual([]);
    expect(shortfalls(1.0051)).toEqual([
      'Its speed ripple of the scan, 0.101 %, is above the 0.100 % that the job allows.',
    ]);
    // Whoever reads inches comes to the same answer.
    expect(inSystem('inch', () => shortfalls(1.0049))).toEqual([]);
    const settles = (settlingTime: number) => judge(job, [withMoves(A, { settlingTime })]).shortfalls[0];
    expect(settles(1.0024 * job.values.dwell)).toEqual([]);
    expect(settles(1.0026 * job.values.dwell)?.[0]).toMatch(/^It takes 201 ms to settle /);
  });

  it('calls best only who does the job, and nobody where one alone does it', () => {
    const rough = relettered(withRipple(withMoves(A, { rmsCurrent: 0.1 }), 2 * job.values.rippleLimit), 'C');
    const marks = (candidates: readonly JudgedCandidate[]) =>
      judge(job, candidates).rows.map(({ cells }) => cells.map(({ mark }) => mark));
    expect(marks([A, B, rough]).every(([, , mark]) => mark === null)).toBe(true);
    expect(marks([A, B, rough]).map(([a, b]) => [a, b])).toEqual(marks([A, B]));
    expect(
      marks([A, rough])
        .flat()
        .every((mark) => mark === null),
    ).toBe(true);
  });

  it('says of a drive that the sizing rules out that it is not tuned', () => {
    const out = { ...B, sizing: { ...B.sizing, passes: false } };
    expect(judge(job, [A, B]).fairness).toMatch(/Each is tuned to a peak sensitivity of at most/);
    expect(judge(job, [A, out]).fairness).toMatch(
      /\bA is tuned to .*\. B, which the sizing rules out, runs with start gains by rule\./,
    );
  });

  it('gives three reasons of many in a sentence, all of them in the list', () => {
    const reasons = ['One.', 'Two.', 'Three.', 'Four.', 'Five.'];
    const out = { ...B, sizing: { ...B.sizing, passes: false, reasons } };
    const { sentences, shortfalls } = judge(job, [A, out]);
    expect(sentences[0]).toMatch(/by calculation, one; two; three; and for two more reasons\.$/);
    expect(shortfalls[1]).toHaveLength(5);
  });

  it('says once that a drive trips, not again of its day', () => {
    const trip = { kind: 'following error', time: 0, limit: 0.00217, pulled: false } as const;
    const { heat } = A.outcome;
    const moves = withMoves(A, { trip });
    const tripped = { ...moves.outcome, heat: { ...heat, asSet: { ...heat.asSet, trip, samples: [] } } };
    const told = at(judge(job, [{ ...moves, outcome: tripped }]).shortfalls, 0).join(' ');
    expect(told.split('2.17 mm')).toHaveLength(2);
  });

  it('names which comes closest, and what it lacks, when none meets the requirements', () => {
    const rough = withRipple(A, 1.1 * job.values.rippleLimit);
    const rougher = withRipple(twin, 3 * job.values.rippleLimit);
    const found = judge(
      job,
      [rougher, rough].map((candidate, k) => relettered(candidate, at('AB', k))),
    );
    expect(found.ranking).toEqual([]);
    expect(found.first).toEqual([]);
    expect(found.choice).toBe(
      `Neither drive meets every requirement of the job. B (${A.title}) comes closest: its speed ripple of the scan, 0.110 %, ` +
        'is above the 0.100 % that the job allows.',
    );
  });
});

describe('a window', () => {
  // Half a micrometre of interpolation error behind a loop that settles to 100 nm.
  it('is not kept by a scale that errs by more, whatever the loop says', () => {
    const errs = { ...A, scene: { ...A.scene, parameters: { ...A.scene.parameters, interpolation1: 5e-7 } } };
    const { shortfalls } = rank(job, [errs, A]);
    expect(at(shortfalls, 0).map(({ text }) => text)).toEqual([
      'its error unseen by the encoder, 503 nm, is above the 100 nm that the job allows',
    ]);
    expect(at(shortfalls, 1)).toEqual([]);
  });

  it('counts the lead error of a screw whose encoder sits on the motor, and not behind a scale', () => {
    const { D } = recordedDrives(job);
    const of = (encoderSide: 'motor' | 'load') =>
      at(
        rank(job, [{ ...D, scene: { ...D.scene, parameters: { ...D.scene.parameters, encoderSide } } }])
          .shortfalls,
        0,
      ).map(({ row }) => row);
    expect(of('motor')).toContain('shortRange');
    expect(of('load')).not.toContain('shortRange');
  });
});

describe('what the job asks', () => {
  const trip = { kind: 'following error', time: 0.3, limit: 0.002, pulled: false } as const;
  const { heat } = A.outcome;
  const heated = (asSet: Partial<typeof heat.asSet>) => ({
    ...A,
    outcome: { ...A.outcome, heat: { ...heat, asSet: { ...heat.asSet, ...asSet } } },
  });
  const cases = [
    ['a trip', withMoves(A, { trip }), 'moves'],
    ['no settling', withMoves(A, { settlingTime: null }), 'settling'],
    ['settling beyond the dwell', withMoves(A, { settlingTime: 1.01 * job.values.dwell }), 'settling'],
    ['ripple', withRipple(A, 1.01 * job.values.rippleLimit), 'ripple'],
    [
      'growth the other way',
      withDay(A, (sample) => ({ ...sample, growth: -1.01 * job.values.growthLimit })),
      'growth',
    ],
    ['a trip by heat', heated({ trip: { ...trip, time: 4000 } }), 'winding'],
    ['a winding that is folded back', heated({ hotTime: 7000 }), 'winding'],
    ['an overload used up', heated({ overloadTime: 70 }), 'rmsCurrent'],
    [
      'a sizing that fails',
      { ...A, sizing: { ...A.sizing, passes: false, reasons: ['The bus is too low.'] } },
      'sizing',
    ],
  ] as const;

  it.each(cases)('%s is a shortfall, in its row', (_, candidate, row) => {
    const { shortfalls } = rank(job, [candidate]);
    expect(at(shortfalls, 0).map((each) => each.row)).toEqual([row]);
    const cell = at(present(judge(job, [candidate]).rows.find(({ id }) => id === row)).cells, 0);
    expect(cell.fails).toBe(true);
    expect(cell.reason).not.toBeNull();
  });

  it('is kept by the recorded drives A and B', () => {
    expect(rank(job, [A, B]).shortfalls).toEqual([[], []]);
  });

  it('says nothing of settling where there is no dwell', () => {
    const restless = recordedJob({ dwell: 0 });
    expect(rank(restless, [withMoves(A, { settlingTime: null })]).shortfalls[0]).toEqual([]);
  });
});
