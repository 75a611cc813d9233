import { expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { recordedStep } from '../../../shared/lesson/recordedStep.ts';
import { stepSession } from '../../../shared/lesson/stepSession.ts';
import type { AxisEvent } from '../../../shared/protocol/axis.ts';
import { PLAIN_VIEW } from './plainView.ts';

const scene = at(SCENES, 0);
const rate = scene.parameters.currentRate;
const record = (events: readonly AxisEvent[], ticks: number) =>
  recordedStep({ session: { scene, events, ticks }, view: PLAIN_VIEW, pace: 1 }, 'A step');

it('a run becomes the run of a step, with its changes and the hand at their times', () => {
  const { run } = record(
    [
      { tick: rate, kind: 'hand', position: 0.01 },
      { tick: rate + rate / 2, kind: 'change', changes: { payload: 6 } },
      { tick: 2 * rate, kind: 'hand', position: null },
    ],
    3 * rate,
  );
  expect(run).toEqual({
    seconds: 3,
    pace: 1,
    hand: [
      { time: 1, to: 0.01 },
      { time: 2, to: null },
    ],
    changes: [{ time: 1.5, parameters: { payload: 6 } }],
  });
});

it('a bench that has not run becomes a step without a run', () => {
  expect(record([], 0).run).toBeNull();
});

it('of a mouse that was read a thousand times the corners remain, and the replay follows it', () => {
  // 50 mm there and back in two seconds, then let go.
  const path = (time: number) => 0.05 * (time < 1 ? time : 2 - time);
  const events: AxisEvent[] = Array.from({ length: 1000 }, (_, k) => {
    const tick = Math.round((k / 500) * rate);
    return { tick, kind: 'hand', position: path(tick / rate) };
  });
  events.push({ tick: 2 * rate, kind: 'hand', position: null });
  const { run } = record(events, 3 * rate);
  expect(run?.hand.length).toBeLessThan(8);
  expect(run?.hand.at(-1)).toEqual({ time: 2, to: null });
  const again = run ? stepSession({ scene }, run).events : [];
  for (const event of again)
    if (event.kind === 'hand' && event.position !== null)
      expect(event.position).toBeCloseTo(path(event.tick / rate), 4);
});

it('a dragged slider leaves no more changes than a step may have, and ends where it was let go', () => {
  const events: AxisEvent[] = Array.from({ length: 1000 }, (_, k) => ({
    tick: k * 40,
    kind: 'change',
    changes: { payload: 1 + k / 1000 },
  }));
  const { run } = record(events, 3 * rate);
  expect(run?.changes.length).toBeLessThanOrEqual(100);
  expect(run?.changes.at(-1)?.parameters.payload).toBe(1.999);
});
