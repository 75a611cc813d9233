import { describe, expect, it } from 'vitest';
import {
  amplitudesAt,
  ForceWave,
  LOUDEST,
  sampleOf,
  WAVE_RATE,
} from '../../../../src/stage/sound/forceWave.ts';

/** A recording of a force over time that grows when it is told to. */
function recording(force: (t: number) => number) {
  return {
    latestTime: 0,
    columns(_: string, from: number, to: number, count: number, lows: Float64Array, highs: Float64Array) {
      for (let i = 0; i < count; i++) lows[i] = highs[i] = force(from + ((i + 0.5) * (to - from)) / count);
    },
  };
}

/** Everything that is read in uneven stretches up to a time. */
function readAll(force: (t: number) => number, until: number): Float64Array {
  const history = recording(force);
  const wave = new ForceWave();
  const all: number[] = [];
  for (let k = 1; history.latestTime < until; k++) {
    history.latestTime = Math.min(history.latestTime + 0.009 + 0.011 * (k % 3), until);
    all.push(...wave.read(history));
  }
  return Float64Array.from(all);
}

describe('the sound of a force', () => {
  it('has every sample once, however uneven the refresh', () => {
    expect(readAll(() => 0, 1)).toHaveLength(WAVE_RATE);
  });

  // A first-order high-pass of 20 Hz: (f/f0)/√(1 + (f/f0)²), e.g. Horowitz & Hill, The Art of Electronics, ch. 1.
  it.each([
    [20, Math.SQRT1_2],
    [200, 0.99504],
    [1000, 0.9998],
  ])('passes %d Hz by %d', (frequency, gain) => {
    const wave = readAll((t) => 50 + 3 * Math.sin(2 * Math.PI * frequency * t), 1).subarray(WAVE_RATE / 2);
    const [amplitude = 0] = amplitudesAt(wave, [frequency]);
    expect(Math.abs(amplitude / (3 * gain) - 1)).toBeLessThan(0.01);
  });

  it('leaves a steady force silent', () => {
    const wave = readAll(() => 300, 1).subarray(WAVE_RATE / 2);
    expect(Math.max(...wave.map(Math.abs))).toBeLessThan(1e-9);
  });

  it('tells two tones apart by their amplitudes', () => {
    const force = (t: number) => 2 * Math.sin(2 * Math.PI * 100 * t) + 0.1 * Math.cos(2 * Math.PI * 700 * t);
    const wave = readAll(force, 1).subarray(-2048);
    const [low = 0, between = 0, high = 0] = amplitudesAt(wave, [100, 350, 700]);
    expect(Math.abs(low - 2)).toBeLessThan(0.06);
    expect(Math.abs(high - 0.1)).toBeLessThan(0.003);
    expect(between).toBeLessThan(0.002);
  });

  it('is never louder than −12 dB of full scale, whatever swings', () => {
    for (const force of [1, 30, 1e3, 1e6, -1e9])
      expect(Math.abs(sampleOf(force, 30))).toBeLessThanOrEqual(LOUDEST);
    expect(20 * Math.log10(LOUDEST)).toBeCloseTo(-12.04, 2);
    // Quiet forces in proportion.
    expect(sampleOf(0.3, 30)).toBeCloseTo(LOUDEST * 0.01, 5);
  });

  it('says nothing of a run that begins anew, and goes on from there', () => {
    const history = recording(() => 1);
    const wave = new ForceWave();
    history.latestTime = 0.1;
    wave.read(history);
    history.latestTime = 0.02;
    expect(wave.read(history)).toHaveLength(0);
    history.latestTime = 0.03;
    expect(wave.read(history)).toHaveLength(0.01 * WAVE_RATE);
  });
});
