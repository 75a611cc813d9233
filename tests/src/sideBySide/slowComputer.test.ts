import { afterEach, expect, it, vi } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { CHANNEL_COUNT } from '../../../shared/core/channels.ts';
import type { Engine } from '../../../shared/protocol/axis.ts';
import { CandidatesRun } from '../../../src/sideBySide/sideBySideRun.ts';
import { fakeWorkers } from '../clients/fakeWorkers.ts';

afterEach(() => void vi.unstubAllGlobals());

/** A simulation that advances so many seconds a frame with the usual engine, and as far as it may in fixed steps. */
const slowAxis = (seconds: number) => () => {
  let [time, engine]: [number, Engine] = [0, 'odex'];
  const nothing = () => {};
  return {
    load: nothing,
    setSlowMotion: nothing,
    useEngine: (asked: Engine) => {
      engine = asked;
    },
    connect(port: MessagePort) {
      port.onmessage = ({ data }) => {
        const goal = data.goal?.time ?? 0;
        time = engine === 'batch' ? Math.max(time, goal) : Math.max(time, Math.min(goal, time + seconds));
        const status = { time, engine, trip: null, isSlow: false, finished: [], lastMove: null };
        const [bins, now] = [new Float64Array(0), new Float64Array(CHANNEL_COUNT)];
        port.postMessage({ run: 1, bins, count: 0, now, status });
      };
    },
  };
};

/** Frames come between two refreshes. */
const pause = () => new Promise((resolve) => setTimeout(resolve));

it.each([
  ['too slow', 0.6 / 60, 'batch'],
  ['fast enough', 2 / 60, 'odex'],
] as const)('axes side by side on a computer that is %s', async (_, seconds, engine) => {
  fakeWorkers({ axisWorker: slowAxis(seconds) });
  const run = new CandidatesRun();
  run.load([DEFAULT_SCENE, DEFAULT_SCENE]);
  run.clock.run();
  for (let refresh = 0; refresh < 600 && run.engine === 'odex'; refresh++) {
    run.refresh(1 / 60);
    await pause();
  }
  expect(run.candidates.map((candidate) => candidate.engine)).toEqual([engine, engine]);
  for (let refresh = 0; refresh < 120; refresh++) {
    run.refresh(1 / 60);
    await pause();
  }
  // It holds real time now, and what was lost before is not held against it.
  expect(run.clock.achieved).toBeGreaterThan(0.9);
  expect(run.clock.lost).toBeLessThan(1);
  run.terminate();
});
