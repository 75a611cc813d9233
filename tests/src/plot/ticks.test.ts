import { describe, expect, it } from 'vitest';
import { decimalsOf, stepAtLeast, tickRange } from '../../../src/plot/ticks.ts';
import { random } from '../history/frames.ts';

describe('ticks', () => {
  it.each([
    [1, 1],
    [1.01, 2],
    [2, 2],
    [3, 5],
    [5.0001, 10],
    [0.07, 0.1],
    [0.3, 0.5],
    [4.1e-9, 5e-9],
    [1e-9, 1e-9],
    [0.1 + 0.2 - 0.1, 0.2],
    [1234, 2000],
  ])('step of at least %f is %f', (size, step) => expect(stepAtLeast(size)).toBe(step));

  it('is never below what was asked and never 2.5 times as much or more', () => {
    const next = random(1);
    for (let i = 0; i < 500; i++) {
      const size = 10 ** (20 * next() - 10);
      const step = stepAtLeast(size);
      expect(step / size).toBeGreaterThan(1 - 1e-8);
      expect(step / size).toBeLessThan(2.5 + 1e-8);
    }
  });

  it('counts multiples of the step, ends included in spite of rounding', () => {
    expect(tickRange(-0.1, 0.3, 0.1)).toEqual([-1, 3]);
    expect(tickRange(0.05, 0.19, 0.1)).toEqual([1, 1]);
    expect(tickRange(0.099999999, 0.100000005, 1e-9)).toEqual([99999999, 100000005]);
  });

  it.each([
    [0.5, 1],
    [0.1, 1],
    [1, 0],
    [200, 0],
    [0.002, 3],
    [1e-6, 6],
  ])('a step of %f takes %i decimals', (step, decimals) => expect(decimalsOf(step)).toBe(decimals));
});
