import { describe, expect, it } from 'vitest';
import { present } from '../../../../shared/core/at.ts';
import type { MoveOutcome } from '../../../../shared/study/outcome.ts';
import { type Ranges, USUAL_RANGES } from '../../../../shared/study/ranges.ts';
import type { Confidence } from '../../../../shared/verdict/confidence/confidence.ts';
import {
  type ConfidenceAsked,
  findConfidence,
} from '../../../../shared/verdict/confidence/findConfidence.ts';
import type { JudgedCandidate } from '../../../../shared/verdict/judgement.ts';
import { costsOf } from '../../../../shared/verdict/rows/costs.ts';
import { recordedDrives, recordedJob } from '../../study/recordedStudy.ts';

const JOB = recordedJob();
const { A, B } = recordedDrives();
const NONE = Object.fromEntries(Object.keys(USUAL_RANGES).map((name) => [name, 0])) as unknown as Ranges;

const held = (): MoveOutcome => {
  throw new Error('nothing is to be simulated');
};

function found(
  candidates: readonly JudgedCandidate[],
  asked: Partial<ConfidenceAsked>,
  movesOf: Parameters<typeof findConfidence>[3] = held,
): Confidence[] {
  return [
    ...findConfidence(JOB, candidates, { ranges: NONE, calculated: 10, simulated: 0, ...asked }, movesOf),
  ];
}

const last = (all: readonly Confidence[]) => present(all.at(-1));

describe('the probability of a choice', () => {
  it('is one where nothing is uncertain, and the same every time', () => {
    const once = last(found([A, B], {}));
    expect(once.calculated.stays.share).toBe(1);
    const ranges = { ...USUAL_RANGES };
    expect(last(found([A, B], { ranges }))).toEqual(last(found([A, B], { ranges })));
  });

  it('with prices alone uncertain is that of two uniform prices, integrated on a grid', () => {
    const range = 0.2;
    const [a, b] = [costsOf(A, JOB), costsOf(B, JOB)];
    const [runA, runB] = [a, b].map(({ total, purchase }) => present(total) - purchase) as [number, number];
    const GRID = 400;
    let staying = 0;
    for (let i = 0; i < GRID; i++)
      for (let j = 0; j < GRID; j++) {
        const factor = (k: number) => 1 + range * ((2 * k + 1) / GRID - 1);
        const [costA, costB] = [factor(i) * a.purchase + runA, factor(j) * b.purchase + runB];
        // A is in position sooner, so it stays until B costs less by an amount that counts.
        if (costA <= costB + JOB.values.savingThatCounts) staying++;
      }
    const exact = staying / GRID ** 2;
    expect(exact).toBeLessThan(0.95);
    const { calculated } = last(found([A, B], { ranges: { ...NONE, price: range }, calculated: 512 }));
    expect(Math.abs(calculated.stays.share - exact)).toBeLessThan(0.015);
  });

  it('tells of more and more draws, then simulates the first of them, and keeps a calculation that is known', () => {
    const all = found([A, B], { calculated: 40, simulated: 5 }, ({ title }) => {
      const { moves } = title === A.title ? A.outcome : B.outcome;
      return { ...moves, settlingTime: title === A.title ? null : moves.settlingTime };
    });
    expect(all.map(({ calculated, simulated }) => [calculated.drawn, simulated?.drawn ?? null])).toEqual([
      [20, null],
      [40, null],
      [40, 5],
    ]);
    const { calculated, simulated } = last(all);
    expect(calculated.stays.share).toBe(1);
    expect(simulated?.stays.share).toBe(0);
    expect(simulated?.ways[0]).toMatchObject({
      letters: ['B'],
      count: 5,
      reason: 'A does not settle within the dwell',
    });
    expect(found([A, B], { known: calculated })).toHaveLength(1);
  });

  it('follows heat: a payload that may be far heavier warms the winding in proportion to what the calculation says', () => {
    const warm = { ...A.scene, parameters: { ...A.scene.parameters, foldbackTemperature: 26.3 } };
    const near = { ...A, scene: warm };
    const { calculated } = last(found([near], { ranges: { ...NONE, payload: 0.5 }, calculated: 40 }));
    // The winding ends at 26.25 °C: about half of all payloads are heavier than stated and pass 26.3 °C.
    expect(calculated.stays.share).toBeGreaterThan(0.35);
    expect(calculated.stays.share).toBeLessThan(0.65);
    expect(calculated.ways.find(({ stays }) => !stays)?.reason).toMatch(/winding/);
  });
});
