import { describe, expect, it } from 'vitest';
import { type Cascade, cascadeOf, parallelGainsOf } from '../../../../shared/axis/loop/cascade.ts';
import { at } from '../../../../shared/core/at.ts';

describe('equivalent cascade', () => {
  it.each([
    [{ positionGain: 300, velocityGain: 7000, resetTime: 0.02 }],
    [{ positionGain: 40, velocityGain: 500, resetTime: 0.1 }],
    [{ positionGain: 1e4, velocityGain: 1, resetTime: 1 }],
    [{ positionGain: 80, velocityGain: 900, resetTime: Number.POSITIVE_INFINITY }],
  ])('comes back from its parallel gains: %o', (cascade) => {
    const back = cascadeOf(parallelGainsOf(cascade)) as Cascade;
    expect(back.velocityGain).toBe(cascade.velocityGain);
    expect(back.positionGain / cascade.positionGain).toBeCloseTo(1, 9);
    expect(1 / back.resetTime).toBeCloseTo(1 / cascade.resetTime, 9);
  });

  // The two controllers as transfer functions, evaluated on the imaginary axis: force per position error.
  it('acts as the parallel controller at every frequency', () => {
    const gains = { Kp: 2.8e6, Ki: 2.2e8, Kd: 7.1e3 };
    const { positionGain, velocityGain, resetTime } = cascadeOf(gains) as Cascade;
    for (const frequency of [0.5, 5, 50, 500]) {
      const w = 2 * Math.PI * frequency;
      const parallel = [gains.Kp, w * gains.Kd - gains.Ki / w];
      // Kvel (Kv + jw)(1 + 1/(j w Tn))
      const turn = 1 / (w * resetTime);
      const cascade = [velocityGain * (positionGain + w * turn), velocityGain * (w - positionGain * turn)];
      expect(at(cascade, 0) / at(parallel, 0)).toBeCloseTo(1, 9);
      expect(at(cascade, 1) / at(parallel, 1)).toBeCloseTo(1, 9);
    }
  });

  it('keeps the position gain when the integral gain goes to zero', () => {
    const without = cascadeOf({ Kp: 2.8e6, Ki: 0, Kd: 7e3 }) as Cascade;
    const hardly = cascadeOf({ Kp: 2.8e6, Ki: 1, Kd: 7e3 }) as Cascade;
    expect(without).toEqual({ positionGain: 400, velocityGain: 7e3, resetTime: Number.POSITIVE_INFINITY });
    expect(hardly.positionGain).toBeCloseTo(400, 6);
  });

  it('says so when there is none', () => {
    expect(cascadeOf({ Kp: 1e6, Ki: 1e10, Kd: 100 })).toContain('No cascade');
    expect(cascadeOf({ Kp: 1e6, Ki: 0, Kd: 0 })).toContain('without damping gain');
  });

  it('is quiet with all gains at zero but the damping', () => {
    expect(cascadeOf({ Kp: 0, Ki: 0, Kd: 10 })).toEqual({
      positionGain: 0,
      velocityGain: 10,
      resetTime: Number.POSITIVE_INFINITY,
    });
  });
});
