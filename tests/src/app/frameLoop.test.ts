import { afterEach, expect, it, vi } from 'vitest';
import { CHANNEL_COUNT } from '../../../shared/core/channels.ts';
import type { Frame } from '../../../shared/protocol/axis.ts';
import { startFrameLoop } from '../../../src/app/frameLoop.ts';

afterEach(() => void vi.unstubAllGlobals());

/** A loop whose display refreshes, and whose frames come, when the test says so; what it did, in order. */
function started() {
  const done: string[] = [];
  let next: (() => void) | null = null;
  vi.stubGlobal('requestAnimationFrame', (refresh: () => void) => {
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
      ingest: ({ run }) => void done.push(`${run} taken in`),
      draw: ([first]) => void done.push(`drawn at ${first}`),
    });
  return { done, start, come, refresh: () => next?.(), isRefreshing: () => next !== null };
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
