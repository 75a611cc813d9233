import { describe, expect, it } from 'vitest';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { tradeOffOf } from '../../../src/tuning/pretune/tradeOff.ts';

const pointOf = (changes: Partial<TuningPoint>): TuningPoint => ({
  origin: 'pretuned',
  label: 'A tuning',
  changes: {},
  peakSensitivity: 1.5,
  phaseMargin: 1,
  gainMargin: 3,
  crossover: 100,
  settlingTime: 0.02,
  rmsError: 1e-6,
  peakError: 3e-6,
  rmsCurrent: 2,
  trip: null,
  ...changes,
});

const resultOf = (...points: TuningPoint[]): PretuneResult => ({
  judged: 'A move.',
  figure: 'settling time',
  best: points[0] ?? pointOf({}),
  textbook: null,
  points,
  choices: [],
  robustness: [],
});

describe('the trade-off', () => {
  it('has a place for every run, further right with its sensitivity, higher with what is judged', () => {
    const { places, missing } = tradeOffOf(
      resultOf(
        pointOf({ peakSensitivity: 1.2, settlingTime: 0.04, rmsCurrent: 1 }),
        pointOf({ peakSensitivity: 1.6, settlingTime: 0.01, rmsCurrent: 3 }),
        pointOf({ peakSensitivity: 1.4, settlingTime: null }),
      ),
    );
    expect(missing).toBe(0);
    expect(places.map(({ x, y }) => [x, y])).toEqual([
      [0, expect.closeTo(0.86, 9)],
      [1, expect.closeTo(0.215, 9)],
      // What did not settle has no figure: it lies above all that did.
      [expect.closeTo(0.5, 9), 1],
    ]);
    expect(places.map(({ size }) => size)).toEqual([0.75, 1.375, expect.closeTo(1.0625, 9)]);
  });

  it('leaves out what has no finite sensitivity, and counts it', () => {
    const { places, missing } = tradeOffOf(
      resultOf(pointOf({ peakSensitivity: Number.POSITIVE_INFINITY }), pointOf({ rmsCurrent: Number.NaN })),
    );
    expect(missing).toBe(1);
    expect(places).toHaveLength(1);
    for (const { x, y, size } of places) expect([x, y, size].every(Number.isFinite)).toBe(true);
  });

  it('has nothing to place where every loop is unstable', () => {
    expect(tradeOffOf(resultOf(pointOf({ peakSensitivity: Number.NaN }))).places).toEqual([]);
  });
});
