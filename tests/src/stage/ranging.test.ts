import { describe, expect, it } from 'vitest';
import { stepAtLeast } from '../../../src/plot/ticks.ts';
import { SteppedRange } from '../../../src/stage/build/ranging.ts';

const limits = { min: 1e-9, max: 1e-2, calm: 0.7, hold: 1 };

describe('the steps of a scale bar', () => {
  it.each([
    [1, 1],
    [1.01, 2],
    [2, 2],
    [2.01, 5],
    [5.5, 10],
    [9.99, 10],
    [3.4e-9, 5e-9],
    [1e-6, 1e-6],
    [0.00011, 0.0002],
    [740, 1000],
  ])('the least of 1, 2, 5, 10, ... not below %d is %d', (x, step) => {
    expect(stepAtLeast(x)).toBe(step);
  });

  it('are one, two or five times a power of ten from a nanometre to ten millimetres', () => {
    for (let x = 1e-9; x < 1e-2; x *= 1.07) {
      const digit = Number(stepAtLeast(x).toExponential().split('e')[0]);
      expect([1, 2, 5]).toContain(digit);
      expect(stepAtLeast(x)).toBeGreaterThanOrEqual(x * (1 - 1e-9));
      expect(stepAtLeast(x)).toBeLessThan(2.5 * x * (1 + 1e-9));
    }
  });
});

describe('a scale that ranges itself', () => {
  it('goes up at once, so that nothing leaves it', () => {
    const range = new SteppedRange(limits);
    expect(range.follow(3e-6, 0)).toBe(5e-6);
    expect(range.follow(5.1e-6, 0)).toBe(1e-5);
  });

  it('comes down only after the amplitude has fitted the smaller step for the whole hold', () => {
    const range = new SteppedRange(limits);
    range.follow(8e-6, 0);
    for (let t = 0; t < 0.95; t += 0.05) expect(range.follow(1e-6, 0.05)).toBe(1e-5);
    range.follow(1e-6, 0.1);
    expect(range.follow(1e-6, 0.05)).toBe(2e-6);
  });

  it('comes down no further than the largest amplitude of the hold asks for', () => {
    const range = new SteppedRange(limits);
    range.follow(8e-6, 0);
    range.follow(3e-6, 0.5);
    expect(range.follow(1e-9, 0.6)).toBe(5e-6);
  });

  it('does not flicker on an amplitude that wavers around a step', () => {
    const range = new SteppedRange(limits);
    const steps = new Set<number>();
    for (let i = 0; i < 2000; i++) {
      const step = range.follow(2e-6 * (1 + 0.05 * Math.sin(i)), 1 / 60);
      if (i > 10) steps.add(step);
    }
    expect([...steps]).toEqual([5e-6]);
  });

  it('stays within its limits whatever comes', () => {
    const range = new SteppedRange(limits);
    expect(range.follow(0, 10)).toBe(1e-9);
    expect(range.follow(-4e-7, 0)).toBe(5e-7);
    expect(range.follow(12, 0)).toBe(1e-2);
    expect(range.follow(Number.NaN, 0)).toBe(1e-2);
    expect(range.follow(Number.POSITIVE_INFINITY, 0)).toBe(1e-2);
  });
});
