import { expect, it } from 'vitest';
import { CommonRange, reachedTogether } from '../../../src/sideBySide/commonRange.ts';

/** The scale bars that follow, from each refresh of a display to the next. */
function bars(range: CommonRange, errors: readonly number[], seconds: number): number[] {
  return Array.from({ length: Math.round(60 * seconds) }, () => {
    range.follow(errors, 1 / 60);
    return range.range.bar;
  });
}

it('is that of the axes that go on, from the refresh in which another has tripped, and stays there', () => {
  const range = new CommonRange();
  const [before] = bars(range, [8e-6, 7e-6], 1).slice(-1);
  // The second oscillates until it trips.
  expect(bars(range, [8e-6, 8e-4], 0.1).at(-1)).toBeGreaterThan(1e-4);
  expect(new Set(bars(range, [8e-6], 3))).toEqual(new Set([before]));
});

it('stays as it is once none goes on, and follows them again after a reset', () => {
  const range = new CommonRange();
  bars(range, [8e-6, 8e-4], 0.1);
  const [last] = bars(range, [8e-4], 0.1).slice(-1);
  expect(new Set(bars(range, [], 5))).toEqual(new Set([last]));
  expect(bars(range, [1e-7, 1e-7], 3).at(-1)).toBeLessThan(1e-6);
});

it('of a chart of all is that of the axes that go on too, and of all once none does', () => {
  const going = { low: -2e-6, high: 3e-6, isStopped: false };
  const tripped = { low: -9e-4, high: 1e-6, isStopped: true };
  expect(reachedTogether([going, tripped])).toEqual({ low: -2e-6, high: 3e-6 });
  expect(reachedTogether([{ ...going, isStopped: true }, tripped])).toEqual({ low: -9e-4, high: 3e-6 });
});
