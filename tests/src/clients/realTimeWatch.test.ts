import { expect, it } from 'vitest';
import { RealTimeWatch } from '../../../src/clients/realTimeWatch.ts';

const FRAME = 1 / 60;

/** Frames of a run at a pace, until the watch says that real time is missed: after how many seconds of the clock, or null. */
function missedAfter(asked: number, pace: number, seconds: number, watch = new RealTimeWatch(), before = 0) {
  let lost = before;
  for (let t = FRAME; t <= seconds; t += FRAME) {
    lost += FRAME * Math.max(0, 1 - pace / asked);
    if (watch.isMissed({ asked, achieved: pace, lost })) return t;
  }
  return null;
}

it.each([
  ['real time', 1, 0.5],
  ['ten times real time, and not even real time comes of it', 10, 0.5],
  ['a half of real time', 0.5, 0.3],
])('says that it is missed where %s was asked for and a second is lost', (_, asked, pace) => {
  const after = missedAfter(asked, pace, 10);
  expect(after).toBeGreaterThanOrEqual(1);
  expect(after).toBeLessThan(4);
});

it.each([
  ['real time is held', 1, 0.95],
  ['ten times real time is not reached, but real time is', 10, 3],
])('says nothing where %s', (_, asked, pace) => expect(missedAfter(asked, pace, 60)).toBeNull());

it('takes a page that opens, or comes back from the background, for no slow computer', () => {
  const watch = new RealTimeWatch();
  for (const lost of [0, 1.2, 1.9]) expect(watch.isMissed({ asked: 1, achieved: 0.2, lost })).toBe(false);
  // It catches its pace; later it is away for an hour.
  expect(missedAfter(1, 1, 5, watch, 1.9)).toBeNull();
  expect(watch.isMissed({ asked: 1, achieved: 0.1, lost: 3600 })).toBe(false);
  expect(missedAfter(1, 1, 5, watch, 3600)).toBeNull();
  // It was slow for a while in between: that is forgotten.
  expect(missedAfter(1, 0.5, 1.5, watch, 3600)).toBeNull();
  expect(missedAfter(1, 1, 1, watch, 3600.75)).toBeNull();
  expect(missedAfter(1, 0.5, 1.5, watch, 3600.75)).toBeNull();
});
