import { describe, expect, it } from 'vitest';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { measureChirp } from '../../../workers/identify/chirp.ts';
import { measureSteppedSine } from '../../../workers/identify/steppedSine.ts';
import { sceneOf } from '../model/sceneOf.ts';
import { barePreset, bareStanding, PRESET_NAMES, quietPreset } from './barePreset.ts';
import {
  expectAgreement,
  followingSine,
  measuredBySteppedSine,
  pushedByProcessForce,
  SWEEP,
} from './measuredLoop.ts';

for (const name of PRESET_NAMES) {
  measuredBySteppedSine(name);
  pushedByProcessForce(name);
  followingSine(name);
}

describe('the presliding guide', () => {
  it('is a spring to a force that does not break it loose', () => {
    const p = quietPreset('tubular', { ...SWEEP, sweepForce: 0.02 });
    const measured = measureSteppedSine(sceneOf(p));
    expectAgreement(measured, new SampledLoop(p, startingPoint(p)));
  });
});

describe('filters in the loop', () => {
  it('are those of the analysis', () => {
    const p = barePreset('u-channel', {
      ...SWEEP,
      filter1: 'notch',
      filter1Frequency: 650,
      filter2: 'notch',
      filter2Frequency: 1500,
      filter2Depth: 0.3,
      filter3: 'low-pass',
      filter3Frequency: 1800,
    });
    expectAgreement(measureSteppedSine(sceneOf(p)), new SampledLoop(p, bareStanding(p)));
  });
});

describe.each(['tubular', 'screw'])('%s, measured by a chirp', (name) => {
  const p = barePreset(name, { ...SWEEP, sweepTime: 4, dwell: 1 });
  // The band of a point is a sixth of an octave at most: next to a resonance its mean is not its middle.
  const resonanceFree = 400;

  it('agrees below the resonances within 0.5 dB and 3°', () => {
    const measured = measureChirp(sceneOf({ ...p, sweepTo: resonanceFree }));
    expect(measured.ended).toBeNull();
    expectAgreement(measured, new SampledLoop(p, bareStanding(p)));
    expect(Math.min(...measured.coherence)).toBeGreaterThan(0.95);
  });
});
