import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { CHANNEL_COUNT } from '../../../shared/core/channels.ts';
import type { Frame } from '../../../shared/protocol/axis.ts';
import { startFrameLoop } from '../../../src/app/frameLoop.ts';

beforeEach(() => void vi.useFakeTimers({ toFake: ['performance'] }));
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** A loop whose display refreshes, and whose frames come, when the test says so; what it did, in order. */
function started() {
  const done: string[] = [];
  const other = { isAtWork: false };
  let next: ((time: number) => void) | null = null;
  vi.stubGlobal('requestAnimationFrame', (refresh: (time: number) => void) => {
    next = refresh;
    return 1;
  });
  vi.stubGlobal('cancelAnimationFrame', () => {
    next = null;
  });
  let arrived: Frame | null = null;
  const source = {
    onFrame: null as (() => void) | null,
    take() {
      const frame = arrived;
      arrived = null;
      return frame;
    },
    ask: (spent: Frame | null) => void done.push(spent ? `asked, ${spent.run} spent` : 'asked'),
  };
  const come = (run: number) => {
    const now = new Float64Array(CHANNEL_COUNT).fill(run);
    arrived = { run, bins: new Float64Array(0), count: 0, now, status: {} as Frame['status'] };
    source.onFrame?.();
  };
  const start = () =>
    startFrameLoop(source, {
      ingest: ({ run }, draws) => void done.push(`${run} taken in${draws ? '' : ', not shown'}`),
      draw: ([first], seldom) => void done.push(`drawn${seldom ? ' seldom,' : ''} at ${first}`),
      drawsSeldom: () => other.isAtWork,
    });
  return {
    done,
    other,
    start,
    come,
    refresh: () => next?.(performance.now()),
    isRefreshing: () => next !== null,
  };
}

it('takes a frame in when it comes, so that the next refresh has only to draw', () => {
  const { done, start, come, refresh } = started();
  start();
  refresh();
  come(1);
  expect(done).toEqual(['asked', 'drawn at 0', '1 taken in']);
  refresh();
  refresh();
  expect(done.slice(3)).toEqual(['asked, 1 spent', 'drawn at 1', 'asked', 'drawn at 1']);
});

it('takes in what came while it stood still, and hears nothing once it is stopped', () => {
  const { done, start, come, isRefreshing } = started();
  come(1);
  const stop = start();
  expect(done).toEqual(['1 taken in']);
  stop();
  come(2);
  expect(isRefreshing()).toBe(false);
  expect(done).toEqual(['1 taken in']);
});

it('draws ten times a second while other work needs the processor, takes in every frame, and draws with each refresh again afterwards', () => {
  const { done, other, start, come, refresh } = started();
  start();
  other.isAtWork = true;
  const drawn: number[] = [];
  for (let k = 1; k <= 60; k++) {
    const before = done.length;
    refresh();
    if (done.slice(before).some((each) => each.startsWith('drawn seldom'))) drawn.push(k);
    vi.advanceTimersByTime(1000 / 60);
    come(k);
  }
  // Every refresh asks and every frame is taken in.
  expect(done.filter((each) => each.startsWith('asked'))).toHaveLength(60);
  expect(done.filter((each) => each.includes('taken in'))).toHaveLength(60);
  // A frame is shown as it comes just where the next refresh draws the rest.
  expect(drawn).toHaveLength(10);
  expect(done.filter((each) => /taken in$/.test(each))).toHaveLength(10);
  other.isAtWork = false;
  refresh();
  come(61);
  refresh();
  expect(done.slice(-4)).toEqual(['drawn at 60', '61 taken in', 'asked, 61 spent', 'drawn at 61']);
});
