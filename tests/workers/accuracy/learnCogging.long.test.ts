import { expect, it } from 'vitest';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { tablePeak } from '../../../shared/core/coggingTable.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { between, recordedRun, rms, shelfScene } from '../../scenes/runs.ts';
import { learn } from './learnedTable.ts';

const iron = shelfScene('slow-scan-iron');
const learned = learn(iron);

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
