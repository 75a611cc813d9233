import { expect, it } from 'vitest';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { measureSteppedSine } from '../../../workers/identify/steppedSine.ts';
import { sceneOf } from '../model/sceneOf.ts';
import { barePreset, bareStanding } from './barePreset.ts';
import { expectAgreement, SWEEP } from './measuredLoop.ts';
import { TWO_MODES } from './twoModes.ts';

it('two further resonances measured by a stepped sine have the open loop and sensitivity of the analysis within 0.5 dB and 3°', () => {
  const p = barePreset('tubular', { ...SWEEP, sweepFrom: 30, sweepTo: 400, ...TWO_MODES });
  const measured = measureSteppedSine(sceneOf(p), () => {});
  expect(measured.ended).toBeNull();
  expect(measured.frequency).toHaveLength(16);
  expectAgreement(measured, new SampledLoop(p, bareStanding(p)));
});
