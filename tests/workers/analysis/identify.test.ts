import { describe, expect, it } from 'vitest';
import { seeded } from '../../../shared/core/seeded.ts';
import { measureChirp } from '../../../workers/identify/chirp.ts';
import { CrossPower } from '../../../workers/identify/crossPower.ts';
import { demodulate } from '../../../workers/identify/demodulate.ts';
import { measureSteppedSine } from '../../../workers/identify/steppedSine.ts';
import { magnitude, phase, times, unit } from '../../../workers/math/complex.ts';
import { bareScene } from '../model/sceneOf.ts';

describe('demodulation', () => {
  // Seven samples in three periods, on a slope: the signal is in the space that is fitted, so it is met exactly.
  it('finds amplitude and phase beside an offset and a drift, at any number of samples per period', () => {
    const phases = Array.from({ length: 7 }, (_, k) => 0.3 + (6 * Math.PI * k) / 7);
    const found = demodulate(
      phases,
      phases.map((phi) => 2.5 * Math.sin(phi + 0.7) + 40 - 3 * phi),
    );
    expect(magnitude(found)).toBeCloseTo(2.5, 10);
    expect(phase(found)).toBeCloseTo(0.7, 10);
  });
});

// Bendat, Piersol, Random Data, 4th ed. 2010, ch. 6 (from memory): noise of the effect lowers the coherence to 1/(1 + noise/signal)
// and leaves the response unbiased.
describe('averaged response', () => {
  const gaussian = (random: () => number) =>
    Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

  it('has coherence 1 when every look shows the same ratio', () => {
    const power = new CrossPower();
    for (const turn of [0, 1, 2]) {
      const cause = unit(turn);
      power.add(cause, times(cause, { re: 0.6, im: 0.8 }));
    }
    expect(power.coherence).toBeCloseTo(1, 12);
    expect(power.response.re).toBeCloseTo(0.6, 12);
    expect(power.response.im).toBeCloseTo(0.8, 12);
  });

  it('has half the coherence when noise is as strong as the signal', () => {
    const random = seeded(7);
    const power = new CrossPower();
    const looks = 20_000;
    for (let k = 0; k < looks; k++) {
      const cause = { re: gaussian(random), im: gaussian(random) };
      power.add(cause, { re: cause.re + gaussian(random), im: cause.im + gaussian(random) });
    }
    // Standard deviations fall with the square root of the looks: five of them.
    expect(Math.abs(power.coherence - 0.5)).toBeLessThan(5 / Math.sqrt(looks));
    expect(Math.abs(power.response.re - 1)).toBeLessThan(5 / Math.sqrt(looks));
  });
});

describe('a measurement', () => {
  const sweep = { sweepFrom: 20, sweepTo: 500, sweepPoints: 5, sweepTime: 1, sweepForce: 0.05, dwell: 0.3 };

  it('loses coherence with a noisy encoder and a weak force', () => {
    const quiet = measureSteppedSine(bareScene(sweep));
    const noisy = measureSteppedSine(bareScene({ ...sweep, encoderNoise: 1e-8 }));
    expect(Math.min(...quiet.coherence)).toBeGreaterThan(0.99);
    expect(Math.min(...noisy.coherence)).toBeLessThan(0.9);
  });

  it.each([
    ['stepped sine', measureSteppedSine],
    ['chirp', measureChirp],
  ])('by %s that trips says why and keeps what it has', (_name, measure) => {
    const result = measure(bareScene({ ...sweep, sweepForce: 500, followingErrorLimit: 1e-6 }));
    expect(result.ended).toMatch(/following error/);
    expect(result.frequency.length).toBeLessThan(5);
  });
});
