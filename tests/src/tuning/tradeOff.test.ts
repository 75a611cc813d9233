import { describe, expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { svg } from '../../../src/plot/svg.ts';
import { tradeOffText } from '../../../src/tuning/pretune/pretuneText.ts';
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
  peakCurrent: 5,
  rmsForce: 60,
  trip: null,
  ...changes,
});

const resultOf = (...points: TuningPoint[]): PretuneResult => ({
  goal: { kind: 'settling', window: 1e-6, sensitivityLimit: 1.6 },
  judged: 'A move.',
  figure: 'settling time',
  best: points[0] ?? pointOf({}),
  textbook: null,
  courses: { best: { time: Float64Array.of(0, 1), error: Float64Array.of(0, 1e-6) }, textbook: null },
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
    const [slow, fast, unsettled] = places.map(({ x, y }) => ({ x, y }));
    expect(present(fast).x).toBeGreaterThan(present(unsettled).x);
    expect(present(unsettled).x).toBeGreaterThan(present(slow).x);
    // Down the page: what did not settle has no figure, and lies above all that did.
    expect(present(unsettled).y).toBeLessThan(present(slow).y);
    expect(present(slow).y).toBeLessThan(present(fast).y);
    for (const { x, y } of places) expect([x, y].every((share) => share > 0 && share < 1)).toBe(true);
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

  it('has numbers on both axes, and says where what did not settle lies', () => {
    const one = pointOf({ peakSensitivity: 1.2, settlingTime: 0.04 });
    const text = svg(tradeOffOf(resultOf(one, pointOf({ settlingTime: null }))).axes).text;
    expect(text).toMatch(/>Peak sensitivity</);
    expect(text).toMatch(/>Settling time in ms</);
    expect(text).toContain('>not settled or tripped<');
    expect(text.match(/>1\.\d+</g)?.length).toBeGreaterThan(2);
    expect(text).toContain('>40<');
    expect(text).not.toMatch(/NaN|Infinity/);
  });

  it('has nothing to place where every loop is unstable', () => {
    expect(tradeOffOf(resultOf(pointOf({ peakSensitivity: Number.NaN }))).places).toEqual([]);
  });
});

describe('the words for the trade-off', () => {
  const best = pointOf({ peakSensitivity: 1.59, settlingTime: 0, rmsError: 89.4e-9 });
  const robust = pointOf({ peakSensitivity: 1.3, settlingTime: 0, rmsError: 148e-9 });

  it('name the most robust tuning that settles at once as the recommended one does, with the error of both', () => {
    const between = pointOf({ peakSensitivity: 1.4, settlingTime: 0, rmsError: 120e-9 });
    const text = tradeOffText(resultOf(best, between, robust));
    expect(text).toMatch(
      /^The moves already settle at once at a peak sensitivity of 1\.30, with an RMS error of 148 nm;/,
    );
    expect(text).toContain('the recommended tuning has 89.4 nm at 1.59.');
  });

  it.each([
    ['needs time', pointOf({ ...robust, settlingTime: 0.001 })],
    ['does not settle', pointOf({ ...robust, settlingTime: null })],
    ['is a textbook’s', pointOf({ ...robust, origin: 'textbook' })],
    ['is as near to instability', pointOf({ ...robust, peakSensitivity: 1.56 })],
  ])('say nothing where the lower one %s', (_, other) => {
    expect(tradeOffText(resultOf(best, other))).toBe('');
  });

  it('say nothing where the recommended tuning needs time itself', () => {
    expect(tradeOffText(resultOf(pointOf({ ...best, settlingTime: 0.01 }), robust))).toBe('');
  });
});
