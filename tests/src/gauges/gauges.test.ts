import { describe, expect, it } from 'vitest';
import { CHANNEL_COUNT, CHANNEL_INDEX } from '../../../shared/core/channels.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { decimalsFor, linearFraction, logFraction } from '../../../src/gauges/fractions.ts';
import { Reading } from '../../../src/gauges/reading.ts';
import { History } from '../../../src/history/history.ts';
import { frame, PERIOD } from '../history/frames.ts';

describe('places on a bar', () => {
  it('lie between the ends and never beyond', () => {
    expect(linearFraction(30, 20, 120)).toBeCloseTo(0.1, 12);
    expect(linearFraction(10, 20, 120)).toBe(0);
    expect(linearFraction(500, 20, 120)).toBe(1);
    expect(linearFraction(Number.NaN, 20, 120)).toBe(0);
  });

  it('are equally far apart from decade to decade', () => {
    // 1 nm to 10 mm is seven decades.
    for (let decade = 0; decade <= 7; decade++)
      expect(logFraction(1e-9 * 10 ** decade, 1e-9, 1e-2)).toBeCloseTo(decade / 7, 9);
    expect(logFraction(0, 1e-9, 1e-2)).toBe(0);
    expect(logFraction(Number.NaN, 1e-9, 1e-2)).toBe(0);
    expect(logFraction(1, 1e-9, 1e-2)).toBe(1);
  });

  it.each([
    [25, 3, 1],
    [884, 3, 0],
    [0.5, 3, 3],
    [25, 4, 2],
    [12000, 4, 0],
  ])('a full scale of %f with %i digits takes %i decimals', (full, digits, decimals) => {
    expect(decimalsFor(full, digits)).toBe(decimals);
  });
});

describe('readings', () => {
  const p = defaultParameters();

  it('hold the peak of the last second, of either sign, and no longer', () => {
    const history = new History();
    const now = new Float64Array(CHANNEL_COUNT);
    now[CHANNEL_INDEX.forceCurrent] = -3;
    const read = () => new Reading(now, p, history);
    expect(read().peak('forceCurrent')).toBeNaN();
    history.ingest(frame(0, 4000, (i) => ({ forceCurrent: i === 100 ? [-8, 1] : [-1, 2] })));
    expect(read().peak('forceCurrent')).toBe(8);
    expect(read().value('forceCurrent')).toBe(-3);
    history.ingest(frame(4000, 6000, () => ({ forceCurrent: [-1, 2] })));
    expect(read().peak('forceCurrent')).toBe(2);
  });

  it('average a force over the last four seconds', () => {
    const history = new History();
    // Half of the time 300 N, half of the time nothing: 300/√2.
    history.ingest(
      frame(0, Math.round(6 / PERIOD), (i) => ({ motorForce: i % 800 < 400 ? [300, 300] : [0, 0] })),
    );
    const reading = new Reading(new Float64Array(CHANNEL_COUNT), p, history);
    expect(reading.rms('motorForce')).toBeCloseTo(300 / Math.SQRT2, 1);
  });
});
