import { expect, it } from 'vitest';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import type { TuningSession } from '../../../shared/protocol/axis.ts';
import { Replay } from '../../../src/bench/replay.ts';
import { sceneOf } from '../../workers/model/sceneOf.ts';

it('a replay gives each change once, when its tick has come', () => {
  const session: TuningSession = {
    scene: sceneOf(defaultParameters()),
    ticks: 100,
    events: [
      { tick: 10, kind: 'change', changes: { Kp: 1e6 } },
      { tick: 12, kind: 'hand', position: 0.1 },
      { tick: 14, kind: 'change', changes: { Kp: 2e6 } },
      { tick: 14, kind: 'change', changes: { Kd: 5e3 } },
    ],
  };
  const replay = new Replay(session, 7);
  expect([replay.hasBegun(7), replay.hasBegun(8)]).toEqual([false, true]);
  expect(replay.changesUpTo(9)).toBeNull();
  expect(replay.changesUpTo(10)).toEqual({ Kp: 1e6 });
  expect(replay.changesUpTo(13)).toBeNull();
  expect(replay.changesUpTo(50)).toEqual({ Kp: 2e6, Kd: 5e3 });
  expect(replay.changesUpTo(99)).toBeNull();
  expect([replay.hasEnded(99), replay.hasEnded(100)]).toEqual([false, true]);
});
