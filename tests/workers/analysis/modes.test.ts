import { describe, expect, it } from 'vitest';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { measureSteppedSine } from '../../../workers/identify/steppedSine.ts';
import { plantResponse } from '../../../workers/pretune/plantResponse.ts';
import { sceneOf } from '../model/sceneOf.ts';
import { barePreset, bareStanding } from './barePreset.ts';
import { expectAgreement, SWEEP } from './measuredLoop.ts';

const MODES: ParameterChanges = {
  mode1: 'table',
  mode1Mass: 1,
  mode1Frequency: 60,
  mode1Damping: 0.03,
  mode2: 'table',
  mode2Mass: 0.4,
  mode2Frequency: 160,
  mode2Damping: 0.02,
};

describe('an axis with two further resonances', () => {
  it('measured by a stepped sine, has the open loop and sensitivity of the analysis within 0.5 dB and 3°', () => {
    const p = barePreset('tubular', { ...SWEEP, sweepFrom: 30, sweepTo: 400, ...MODES });
    const measured = measureSteppedSine(sceneOf(p), () => {});
    expect(measured.ended).toBeNull();
    expect(measured.frequency).toHaveLength(16);
    expectAgreement(measured, new SampledLoop(p, bareStanding(p)));
  });

  it('shows them to pretuning, each a little above the frequency with the table held', () => {
    const p = barePreset('tubular', MODES);
    const { modes } = plantResponse(p, 50).sliding;
    const without = plantResponse({ ...p, mode1: 'off', mode2: 'off' }, 50).sliding.modes;
    expect(modes).toHaveLength(without.length + 2);
    for (const held of [60, 160]) {
      // On the mass M − m_f that is left; the other parts and the motor's drag move it a little.
      const found = modes.find(({ frequency }) => frequency > held && frequency < 1.1 * held);
      expect(found).toBeDefined();
    }
  });
});
