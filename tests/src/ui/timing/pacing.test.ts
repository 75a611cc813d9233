import { expect, it, onTestFinished, vi } from 'vitest';
import { Pacing } from '../../../../src/ui/timing/pacing.ts';

it('has a thing told at once, and then four times a second at most, however often it comes', () => {
  const now = vi.spyOn(performance, 'now');
  onTestFinished(() => now.mockRestore());
  const pacing = new Pacing();
  let told = 0;
  for (let time = 0; time <= 2000; time += 10) {
    now.mockReturnValue(time);
    if (pacing.isDue()) told++;
  }
  expect(told).toBe(9);
});
