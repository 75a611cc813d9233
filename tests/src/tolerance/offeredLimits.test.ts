import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { MachineResult } from '../../../shared/tolerance/runFigures.ts';
import { offeredLimits } from '../../../src/tolerance/offeredLimits.ts';

const NOMINAL: MachineResult = {
  trip: null,
  holds: true,
  figures: {
    settlingTime: 0.052,
    peakError: 8e-6,
    rmsError: 2.31e-8,
    peakCurrent: 4,
    windingTemperature: 40,
  },
};

const offered = (changes: ParameterChanges = {}, figures: Partial<MachineResult['figures']> = {}) =>
  offeredLimits(
    { ...DEFAULT_SCENE, parameters: { ...DEFAULT_SCENE.parameters, ...changes } },
    { ...NOMINAL, figures: { ...NOMINAL.figures, ...figures } },
  );

it('offers what the machine takes and a tenth, 1 ms at least, and never more than the dwell', () => {
  expect(offered({ dwell: 0.15 }).limits).toEqual({ settlingTime: 0.0572 });
  expect(offered({ dwell: 0.15 }, { settlingTime: 0 }).limits).toEqual({ settlingTime: 0.001 });
  expect(offered({ dwell: 0.055 }).limits).toEqual({ settlingTime: 0.055 });
  expect(offered().text).toMatch(/in 52\.0 ms\. Offered as the limit: 57\.2 ms, which is 10 % more/);
});

it('offers the dwell where the machine itself does not settle, and says so', () => {
  const { limits, text } = offered({ dwell: 0.15 }, { settlingTime: null });
  expect(limits).toEqual({ settlingTime: 0.15 });
  expect(text).toMatch(/does not settle into ±1\.00 µm within its dwell of 150 ms/);
});

it('offers the following error for a scan, and nothing for a drive that trips or is off', () => {
  expect(offered({ program: 'scan' }).limits).toEqual({ rmsError: 2.54e-8 });
  expect(offered({ drive: 'off' }).limits).toEqual({});
  expect(offeredLimits(DEFAULT_SCENE, { ...NOMINAL, trip: 'following error' }).limits).toEqual({});
});
