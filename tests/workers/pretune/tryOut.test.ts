import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { taskOf } from '../../../workers/pretune/task.ts';
import { tryOut, tryToBeat } from '../../../workers/pretune/tryOut.ts';

const TASK = taskOf(DEFAULT_SCENE);

it('a trial that is over early has lost, and one that wins has the figures of the whole run', () => {
  const whole = tryOut(TASK, {}, 'as it is', '');
  const { settlingTime, rmsError } = whole;
  const against = (outcome: { settlingTime: number | null; rmsError: number }) =>
    tryToBeat(TASK, { ...outcome, trip: null }, {}, 'as it is', '');

  expect(settlingTime).toBeGreaterThan(0);
  expect(against({ settlingTime: null, rmsError: 0 })).toEqual(whole);
  expect(against({ settlingTime, rmsError: 1.001 * rmsError })).toEqual(whole);
  expect(against({ settlingTime, rmsError: 0.999 * rmsError })).toBeNull();
  expect(against({ settlingTime: 0, rmsError: 1 })).toBeNull();
});
