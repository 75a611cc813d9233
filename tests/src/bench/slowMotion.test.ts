import { expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { SlowMotion } from '../../../src/bench/slowMotion.ts';
import { Session } from '../../../workers/run/session.ts';

const found = present(SCENES.find(({ id }) => id === 'mould-shuttle'));
/** Its move shortened, so that little has to be simulated. */
const shuttle = { ...found, parameters: { ...found.parameters, stroke: 0.025, speed: 0.3 } };
const LIMIT = shuttle.parameters.followingErrorLimit;

/** Runs a scene for a while as a page would that is refreshed every millisecond of simulated time; the pace over time. */
function paces(scene: Scene, seconds: number, slowMotion: SlowMotion, pace = 1) {
  const session = new Session(scene);
  const told: { readonly time: number; readonly pace: number }[] = [];
  let timeScale = pace;
  while (session.axis.tick < seconds * scene.parameters.currentRate && session.canStep) {
    for (let k = 0; k < scene.parameters.currentRate / 1000 && session.canStep; k++) session.step();
    const { bins, count } = session.recorder.hand(null);
    const time = session.axis.tick / scene.parameters.currentRate;
    timeScale = slowMotion.take({ bins, count, status: { time, timeScale } }, LIMIT) ?? timeScale;
    told.push({ time, pace: timeScale });
  }
  return { told, trip: session.axis.trip };
}

function switchedOn(): SlowMotion {
  const slowMotion = new SlowMotion();
  slowMotion.toggle();
  return slowMotion;
}

// 25 mm at 0.3 m/s, 12 m/s² and 600 m/s³, from standstill to standstill: s/v + v/a + a/j = 128 ms.
const ARRIVAL = 0.025 / 0.3 + 0.3 / 12 + 12 / 600;

it('off, it leaves the pace alone', () => {
  expect(new Set(paces(shuttle, 0.15, new SlowMotion()).told.map(({ pace }) => pace))).toEqual(new Set([1]));
});

it('slows down just before the command arrives, through the settling, and then gives the pace back', () => {
  const { told } = paces(shuttle, 0.22, switchedOn());
  const slow = told.filter(({ pace }) => pace < 1).map(({ time }) => time);
  expect(slow[0]).toBeGreaterThan(ARRIVAL - 0.07);
  expect(slow[0]).toBeLessThan(ARRIVAL - 0.01);
  expect(slow.at(-1)).toBeGreaterThan(ARRIVAL + 0.04);
  expect(slow.at(-1)).toBeLessThan(ARRIVAL + 0.07);
  expect(told.at(-1)?.pace).toBe(1);
});

it('slows down before a trip by following error', () => {
  const soft = {
    ...shuttle,
    parameters: { ...shuttle.parameters, Kp: 2e4, Ki: 0, Kd: 200, accelerationFeedforward: 0 },
  };
  const { told, trip } = paces(soft, 0.12, switchedOn());
  expect(trip).not.toBeNull();
  expect(told.find(({ pace }) => pace < 1)?.time).toBeLessThan(trip?.time ?? 0);
});

it('a pace that is set meanwhile is kept, and switched off it gives its own back', () => {
  const slowMotion = switchedOn();
  const slowed = paces(shuttle, ARRIVAL, slowMotion, 0.5);
  expect(slowed.told.at(-1)?.pace).toBe(0.5 / 20);
  expect(slowMotion.toggle()).toBe(0.5);
  expect(paces(shuttle, 0.15, switchedOn(), Number.POSITIVE_INFINITY).told.at(-1)?.pace).toBe(
    Number.POSITIVE_INFINITY,
  );
});
