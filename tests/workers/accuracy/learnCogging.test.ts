import { expect, it } from 'vitest';
import { dryMotorDrag, viscousDrag } from '../../../shared/axis/drag.ts';
import { slidingFriction } from '../../../shared/axis/guide.ts';
import { coggingTerms } from '../../../shared/axis/periodic.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { changedSinceLearned, tablePeak } from '../../../shared/core/coggingTable.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { learnCogging } from '../../../workers/accuracy/learnCogging.ts';
import { between, recordedRun, rms, shelfScene } from '../../scenes/runs.ts';

function learn(scene: Scene) {
  const result = learnCogging(scene);
  if (!('table' in result)) throw new Error('nothing was learned');
  return result;
}

const iron = shelfScene('slow-scan-iron');
const learned = learn(iron);

it('finds the cogging of the motor to a few per cent, although friction is in every current', () => {
  const terms = coggingTerms(iron.parameters);
  const { table } = learned;
  const truth = table.forces.map((_, k) =>
    terms.reduce(
      (sum, { amplitude, period, phase }) =>
        sum + amplitude * Math.sin((2 * Math.PI * (table.from + k * table.spacing)) / period + phase),
      0,
    ),
  );
  const off = table.forces.map((force, k) => force - truth[k]!);
  expect(rms(off) / rms(truth)).toBeLessThan(0.03);
  expect(learned.nothingToGain).toBe(false);
  // Half the difference of the directions is dry friction with a little viscous drag.
  const dry = slidingFriction(iron.parameters) + dryMotorDrag(iron.parameters);
  expect(learned.friction).toBeGreaterThan(dry);
  expect(learned.friction - viscousDrag(iron.parameters) * learned.table.scanSpeed).toBeCloseTo(dry, 0);
});

it('the following error of the slow scan falls with the table', () => {
  const error = (scene: Scene) => rms(between(recordedRun(scene, 12).samples, C.followingError, 2, 12));
  const before = error(iron);
  const on = { ...iron, coggingTable: learned.table };
  const after = error({ ...on, parameters: { ...iron.parameters, coggingCompensation: true } });
  const measured = error({
    ...on,
    parameters: { ...iron.parameters, coggingCompensation: true, coggingPosition: 'measured' },
  });
  expect(before / after).toBeGreaterThan(10);
  expect(before / measured).toBeGreaterThan(10);
  // Without the switch the table does nothing.
  expect(error(on)).toBe(before);
});

it('on the ironless motor there is nothing to gain', () => {
  const { table, nothingToGain } = learn(shelfScene('slow-scan-coreless'));
  expect(tablePeak(table)).toBeLessThan(0.05);
  expect(nothingToGain).toBe(true);
});

it('tells what of the machine is no longer what it was', () => {
  expect(changedSinceLearned(learned.table, iron.parameters)).toEqual([]);
  const { parameters } = shelfScene('slow-scan-iron', { cogging1: 12, payload: 6 });
  expect(changedSinceLearned(learned.table, parameters)).toEqual(['cogging1']);
});
