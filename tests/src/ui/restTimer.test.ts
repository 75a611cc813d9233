import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { RestTimer } from '../../../src/ui/timing/restTimer.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

it('calls back once after the last touch of many, a rest later, and sets few timers for it', () => {
  const set = vi.spyOn(globalThis, 'setTimeout');
  let calls = 0;
  const timer = new RestTimer(300, () => calls++);
  for (let touch = 0; touch < 100; touch++) {
    timer.touch();
    vi.advanceTimersByTime(16);
  }
  expect([calls, timer.isDue]).toEqual([0, true]);
  vi.advanceTimersByTime(283);
  expect(calls).toBe(0);
  vi.advanceTimersByTime(2);
  expect([calls, timer.isDue]).toEqual([1, false]);
  expect(set.mock.calls.length).toBeLessThan(10);
  vi.advanceTimersByTime(10_000);
  expect(calls).toBe(1);
});

it('calls nobody back once it is cancelled, until it is touched again', () => {
  let calls = 0;
  const timer = new RestTimer(300, () => calls++);
  timer.touch();
  timer.cancel();
  vi.advanceTimersByTime(1000);
  expect([calls, timer.isDue]).toEqual([0, false]);
  timer.touch();
  vi.advanceTimersByTime(300);
  expect(calls).toBe(1);
});
