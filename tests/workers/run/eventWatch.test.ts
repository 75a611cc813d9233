import { expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C, CHANNEL_COUNT } from '../../../shared/core/channels.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { EventWatch } from '../../../workers/run/eventWatch.ts';
import { Session } from '../../../workers/run/session.ts';

const found = present(SCENES.find(({ id }) => id === 'mould-shuttle'));
/** Its move shortened, so that little has to be simulated. */
const shuttle = { ...found, parameters: { ...found.parameters, stroke: 0.025, speed: 0.3 } };
// 25 mm at 0.3 m/s, 12 m/s² and 600 m/s³, from standstill to standstill: s/v + v/a + a/j = 128 ms.
const ARRIVAL = 0.025 / 0.3 + 0.3 / 12 + 12 / 600;

/** Times of a run at which something is near, looked for every millisecond. */
function eventful(scene: Scene, seconds: number) {
  const { parameters: p } = scene;
  const session = new Session(scene);
  const watch = new EventWatch();
  const times: number[] = [];
  while (session.axis.time < seconds && session.canStep) {
    for (let k = 0; k < p.currentRate / 1000 && session.canStep; k++) session.step();
    session.recorder.hand(null);
    if (watch.isNear(session.axis.record, p.followingErrorLimit)) times.push(session.axis.time);
  }
  return { times, trip: session.axis.trip };
}

it('sees an arrival from just before it until the axis has settled', () => {
  const { times } = eventful(shuttle, 0.22);
  expect(times[0]).toBeGreaterThan(ARRIVAL - 0.07);
  expect(times[0]).toBeLessThan(ARRIVAL - 0.01);
  expect(times.at(-1)).toBeGreaterThan(ARRIVAL + 0.04);
  expect(times.at(-1)).toBeLessThan(ARRIVAL + 0.07);
});

it('sees a trip by following error before it comes', () => {
  const soft = {
    ...shuttle,
    parameters: { ...shuttle.parameters, Kp: 2e4, Ki: 0, Kd: 200, accelerationFeedforward: 0 },
  };
  const { times, trip } = eventful(soft, 0.12);
  expect(times[0]).toBeLessThan(present(trip).time);
});

/** What a watch says to a table that has this speed, m/s, at each millisecond, where it should have 10 mm/s. */
function told(speeds: readonly number[], setSpeed = 0.01): boolean[] {
  const watch = new EventWatch();
  return speeds.map((speed, millisecond) => {
    const record = new Float64Array(CHANNEL_COUNT);
    record[C.time] = millisecond / 1000;
    record[C.setSpeed] = setSpeed;
    record[C.tableSpeed] = speed;
    return watch.isNear(record, 1e-3);
  });
}

const many = (count: number, speed: number) => new Array<number>(count).fill(speed);

it('sees a table slip that has stuck in a slow scan, for 50 ms', () => {
  const seen = told([...many(50, 0), ...many(100, 0.02)]);
  expect(seen.indexOf(true)).toBe(50);
  expect(seen.lastIndexOf(true)).toBe(99);
});

it('takes neither a steady scan for a slip, nor a move that begins, nor a table at rest', () => {
  expect(told(many(150, 0.01))).not.toContain(true);
  expect(told([...many(10, 0), ...many(100, 0.01)])).not.toContain(true);
  expect(told([...many(50, 0), ...many(50, 0.001)], 0)).not.toContain(true);
});
