import { describe, expect, it } from 'vitest';
import { FrictionCompensation } from '../../../shared/axis/frictionCompensation.ts';
import { slidingFriction } from '../../../shared/axis/guide.ts';
import { parameterWarnings } from '../../../shared/axis/warnings.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { defaultParameters, type ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { sentenceText } from '../../../shared/core/sentence.ts';
import { between, recordedRun, shelfScene } from '../../scenes/runs.ts';

describe('the law', () => {
  const p = {
    coulombCompensation: 20,
    breakawayCompensation: 10,
    breakawaySpeed: 0.01,
    compensationSpeed: 1e-4,
  };

  it('takes the sign of the speed, with nothing at rest, and builds up over v_cc', () => {
    expect(new FrictionCompensation(p).force(0)).toBe(0);
    expect(new FrictionCompensation(p).force(1)).toBe(20);
    expect(new FrictionCompensation(p).force(-1)).toBe(-20);
    expect(new FrictionCompensation({ ...p, breakawayCompensation: 0 }).force(1e-4)).toBeCloseTo(
      20 * Math.tanh(1),
      12,
    );
  });

  it('adds the boost at low speed: all of it far below v_bc, 1/e of it there', () => {
    expect(new FrictionCompensation(p).force(1e-3)).toBeCloseTo(20 + 10 * Math.exp(-0.01), 6);
    expect(new FrictionCompensation(p).force(0.01)).toBeCloseTo(20 + 10 / Math.E, 12);
  });
});

describe('on the running axis', () => {
  const base = shelfScene('mould-shuttle').parameters;
  const friction = slidingFriction(base);

  /** Peak error while a slow sine passes its reversals, m. */
  function reversalSpike(changes: ParameterChanges): number {
    const scene = shelfScene('mould-shuttle', {
      program: 'sine',
      start: 0,
      sineAmplitude: 2e-3,
      sineFrequency: 1,
      encoderNoise: 0,
      ...changes,
    });
    const { samples } = recordedRun(scene, 1.6);
    return Math.max(...between(samples, C.followingError, 0.6, 1.6).map(Math.abs));
  }

  it('the spike at a reversal falls to less than a third with the friction of the guide, and grows beyond it', () => {
    const off = reversalSpike({});
    const right = reversalSpike({ coulombCompensation: friction });
    const triple = reversalSpike({ coulombCompensation: 3 * friction });
    expect(right / off).toBeLessThan(0.33);
    expect(triple / off).toBeGreaterThan(1);
  });
});

describe('the warning', () => {
  const warned = (changes: ParameterChanges) =>
    parameterWarnings({ ...defaultParameters(), ...changes }).map((each) =>
      sentenceText(each, { names: 'name', units: 'metric' }),
    );
  const guide = { frictionCoefficient: 0, stictionCoefficient: 0, sealFriction: 10, sealStiction: 15 };

  it('is silent up to the friction of the axis, and names both forces above it', () => {
    expect(warned({ ...guide, coulombCompensation: 10 })).toEqual([]);
    expect(warned({ ...guide, coulombCompensation: 12 })[0]).toMatch(
      /^coulombCompensation \(12\.0 N\) is above the dry friction of the axis, 10\.0 N: .* limit cycle/s,
    );
  });

  it('holds the boost against the breakaway force', () => {
    expect(warned({ ...guide, coulombCompensation: 10, breakawayCompensation: 5 })).toEqual([]);
    expect(warned({ ...guide, coulombCompensation: 10, breakawayCompensation: 8 })[0]).toMatch(
      /together \(18\.0 N\) are above the breakaway force of the axis, 15\.0 N/,
    );
  });
});
