import { expect, it } from 'vitest';
import { NumberClock } from '../../../src/ui/timing/numberClock.ts';

it('writes with the first refresh, and then ten times a second at most', () => {
  const clock = new NumberClock();
  const written = Array.from({ length: 64 }, () => clock.refresh(1 / 64));
  expect(written[0]).toBe(true);
  // Seven refreshes of 1/64 s are the first that last 0.1 s.
  expect(written.flatMap((isWritten, index) => (isWritten ? [index] : []))).toEqual([
    0, 7, 14, 21, 28, 35, 42, 49, 56, 63,
  ]);
});
