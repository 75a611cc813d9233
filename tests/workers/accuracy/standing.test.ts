import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { disturbance, FORCE_SHARE } from '../../../workers/accuracy/disturbance.ts';
import { increment } from '../../../workers/accuracy/increment.ts';
import { roundNumber, roundUpIndex } from '../../../workers/accuracy/roundNumbers.ts';
import { staircase } from '../../../workers/accuracy/staircase.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { type Complex, magnitude, over, plus, scaled, times, unit } from '../../../workers/math/complex.ts';
import { SCREW, tunedScene } from './bench.ts';

function analysed({ parameters: p }: Scene): SampledLoop {
  return new SampledLoop(p, { ...startingPoint(p), friction: 'sliding' });
}

it.each([
  [0.9e-9, 1e-9],
  [1e-9, 1e-9],
  [1.01e-9, 2e-9],
  [2.1, 5],
  [5.1e-7, 1e-6],
  [3 * 1e-7, 5e-7],
])('%d rounded up to 1, 2 or 5 is %d', (value, rounded) => {
  expect(roundNumber(roundUpIndex(value))).toBe(rounded);
});

describe('small stairs', () => {
  it('are a fifth of the window, but two counts of the encoder at least', () => {
    expect(staircase(tunedScene(60, { window: 1e-7 })).step).toBe(2e-8);
    expect(staircase(tunedScene(60, { window: 1e-7, encoderResolution: 3e-8 })).step).toBe(1e-7);
  });

  it('are taken in full by an axis without fault', () => {
    const { step, largestError, noise, time, set, tool } = staircase(tunedScene(100, { window: 1e-7 }));
    expect(largestError).toBeLessThan(1e-3 * step);
    expect(noise).toBeLessThan(1e-2 * step);
    expect(Math.max(...set)).toBe(5 * step);
    expect(time.length).toBe(tool.length);
    expect(Math.abs(at(tool, tool.length >> 1) / (5 * step) - 1)).toBeLessThan(0.02);
  });

  // Noise σ and rounding to counts q together are a white disturbance of variance σ² + q²/12 as long as σ is no less than q/2 (Widrow,
  // Kollár, Quantization Noise, 2008, from memory); the loop follows it as far as its T reaches.
  it('show the noise of the encoder, its rounding included, as far as the loop follows it', () => {
    const [encoderNoise, encoderResolution] = [2e-9, 4e-9];
    const scene = tunedScene(100, { window: 1e-7, encoderNoise, encoderResolution });
    const loop = analysed(scene);
    const lines = 4000;
    let square = 0;
    for (let k = 1; k <= lines; k++)
      square += magnitude(loop.at((Math.PI * k) / lines / loop.period).closedLoop) ** 2 / lines;
    const expected = Math.sqrt((encoderNoise ** 2 + encoderResolution ** 2 / 12) * square);
    expect(Math.abs(staircase(scene).noise / expected - 1)).toBeLessThan(0.08);
  });
});

describe('the smallest step', () => {
  // By hand, lost motion b behind an encoder on the motor, steps of b: nine of b and a turn of nothing, mean 0.9 b, s = b/√10. Steps of
  // b/2: eight of b/2 and two of nothing, mean 0.4 b, s = 0.21 b: not twice above zero.
  it('with lost motion b behind the encoder is b', () => {
    const backlash = 1e-5;
    const scene = tunedScene(100, {
      ...SCREW,
      backlash,
      sealFriction: 5,
      sealStiction: 5,
      acceleration: 0.2,
      jerk: 10,
      travelMin: -0.011,
      travelMax: 0.011,
      start: 0,
      window: 1e-6,
    });
    const { smallest, tried } = increment(scene);
    expect(smallest).toBe(backlash);
    const [whole, half] = tried;
    expect(present(whole).mean / backlash).toBeCloseTo(0.9, 1);
    expect(present(whole).spread / backlash).toBeCloseTo(1 / Math.sqrt(10), 1);
    expect(present(half).mean / backlash).toBeCloseTo(0.4, 1);
    expect(present(half).made).toBe(false);
  });
});

describe('a sudden force', () => {
  it('is a stated share of the continuous force of all motors', () => {
    const found = disturbance(tunedScene(60, { motorCount: 2, continuousForce: 150 }));
    expect(found.force).toBeCloseTo(FORCE_SHARE * 300, 9);
    expect(found.stiffness).toBeCloseTo(found.force / found.peak, 3);
  });

  // The analysed loop gives the response to a square wave that is long against the axis, line by line (Fourier).
  it('moves the table as the analysed loop says', () => {
    const scene = tunedScene(60, { window: 1e-6 });
    const { force, peak, recovery, time, error } = disturbance(scene);
    const expected = squareResponse(analysed(scene), scene, force, 0.6);
    const expectedPeak = Math.max(...expected.map(Math.abs));
    expect(Math.abs(peak / expectedPeak - 1)).toBeLessThan(2e-3);
    const { positionDivider, currentRate, window } = scene.parameters;
    const period = positionDivider / currentRate;
    time.forEach((t, k) => {
      expect(Math.abs(at(error, k) - at(expected, Math.round(t / period)))).toBeLessThan(2e-3 * peak);
    });
    const lastOutside = expected.reduce((last, value, k) => (Math.abs(value) > window ? k : last), 0);
    expect(Math.abs(present(recovery) / ((lastOutside + 1) * period) - 1)).toBeLessThan(0.02);
  });

  // A spring in series that the encoder on the motor does not see: it stays wound up by F/k.
  it('winds up what the encoder does not see, and no recovery mends it', () => {
    const linkStiffness = 5e7;
    const scene = tunedScene(40, { ...SCREW, linkStiffness, linkDamping: 5000, window: 1e-7 });
    const { force, error, recovery } = disturbance(scene);
    expect(Math.abs(present(error.at(-1)) / (force / linkStiffness) - 1)).toBeLessThan(0.01);
    expect(recovery).toBeNull();
  });
});

/** Table position at the samples of the first half of a square wave of force that goes on and off for `half` seconds each. */
function squareResponse(loop: SampledLoop, { parameters: p }: Scene, force: number, half: number): number[] {
  const length = 2 * Math.round(half * p.currentRate);
  const samples = length / 2 / p.positionDivider;
  const response = new Float64Array(samples);
  const addLine = (k: number, amplitude: Complex) => {
    for (let i = 0; i < samples; i++) {
      const { re } = times(amplitude, unit((2 * Math.PI * k * i * p.positionDivider) / length));
      response[i] = at(response, i) + re;
    }
  };
  // Lines of a sampled square wave: (1/N) Σ_{n < N/2} exp(−2πj k n/N), each with its mirror image; it changes about its mean.
  for (let k = 1; k < length / 2; k += 2) {
    const step = unit((-2 * Math.PI * k) / length);
    const lineOf = over(scaled({ re: 1, im: 0 }, 2), plus({ re: 1, im: 0 }, scaled(step, -1)));
    const line = scaled(lineOf, force / length);
    addLine(k, scaled(times(line, loop.compliance((2 * Math.PI * k * p.currentRate) / length)), 2));
  }
  return [...response];
}
