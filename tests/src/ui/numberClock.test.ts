import { expect, it, onTestFinished, vi } from 'vitest';
import { NumberClock, TOLD } from '../../../src/ui/timing/numberClock.ts';

it('writes with the first refresh, and then ten times a second at most', () => {
  const clock = new NumberClock();
  const written = Array.from({ length: 64 }, () => clock.refresh(1 / 64));
  expect(written[0]).toBe(true);
  // Seven refreshes of 1/64 s are the first that last 0.1 s.
  expect(written.flatMap((isWritten, index) => (isWritten ? [index] : []))).toEqual([
    0, 7, 14, 21, 28, 35, 42, 49, 56, 63,
  ]);
});

it('has a thing told at once, and then twice a second at most, however often it comes', () => {
  const now = vi.spyOn(performance, 'now');
  onTestFinished(() => now.mockRestore());
  const pacing = new NumberClock(TOLD);
  let told = 0;
  for (let time = 0; time <= 2000; time += 10) {
    now.mockReturnValue(time);
    if (pacing.isDue()) told++;
  }
  expect(told).toBe(5);
});
