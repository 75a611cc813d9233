import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { positionRate } from '../../../shared/core/crossChecks.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { Profile } from '../../../shared/motion/profile.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { extremes, ripple } from '../../../workers/accuracy/ripple.ts';
import { causeOf, periodicTerms } from '../../../workers/accuracy/ripplePeriods.ts';
import { scanPlan } from '../../../workers/accuracy/scanPlan.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { magnitude } from '../../../workers/math/complex.ts';
import { Spectrum } from '../../../workers/math/spectrum.ts';
import { bareScene } from '../model/sceneOf.ts';
import { jobOf, tunedScene } from './bench.ts';

const SLOW = { acceleration: 1, jerk: 20, window: 1e-7 } as const;

/** The responses of the loop, without what makes the ripple, to a wave of this period at this speed. */
function loopAt({ parameters }: Scene, speed: number, period: number, without: ParameterChanges) {
  const p = { ...parameters, ...without };
  const omega = (2 * Math.PI * speed) / period;
  return { omega, ...new SampledLoop(p, { ...startingPoint(p), friction: 'sliding' }).at(omega) };
}

describe('the spectrum', () => {
  // A sine of known amplitude; cycles that are not whole, between two values of the spectrum.
  it.each([
    [10, 0.3],
    [40.37, 0.002],
    [333.21, 1.7],
  ])('has a sine of %d cycles at its place with its amplitude %d', (cycles, amplitude) => {
    const samples = Float64Array.from(
      { length: 3000 },
      (_, k) => 0.4 + amplitude * Math.sin((2 * Math.PI * cycles * k) / 3000 + 0.3),
    );
    const spectrum = new Spectrum(samples);
    const top = spectrum.top(spectrum.amplitude.indexOf(Math.max(...spectrum.amplitude)));
    expect(Math.abs(top.cycles - cycles)).toBeLessThan(2e-3);
    expect(Math.abs(top.amplitude / amplitude - 1)).toBeLessThan(2e-3);
  });

  // Parseval's theorem: the squares of the windowed samples are those of its Fourier transform.
  it('keeps the energy of the windowed samples', () => {
    const n = 1024;
    const samples = Float64Array.from({ length: n }, (_, k) => Math.sin(k * k));
    const mean = samples.reduce((sum, value) => sum + value, 0) / n;
    const windowed = samples.reduce(
      (sum, value, k) => sum + ((1 - Math.cos((2 * Math.PI * k) / n)) * (value - mean)) ** 2,
      0,
    );
    const { amplitude, spacing } = new Spectrum(samples);
    const transformed = amplitude.reduce((sum, value) => sum + (value * n) ** 2 / 4, 0);
    // Half the spectrum, of n/spacing values in all.
    expect(Math.abs((2 * transformed * spacing) / n / windowed - 1)).toBeLessThan(1e-3);
  });
});

describe('the curve of speed ripple against distance', () => {
  // 599 and 601 stretches, sample counts that the number of stretches does not divide, and the shortest scans.
  const COUNTS = [0, 1, 2, 3, 7, 599, 600, 601, 1199, 1200, 1201, 1799, 2001, 12_345, 65_537, 80_001];

  it.each(COUNTS)('of %d samples is finite, in order, and holds the smallest and the largest sample', (n) => {
    const samples = Float64Array.from({ length: n }, (_, k) => Math.sin(k * k));
    const { distance, deviation } = extremes(samples, 0.2);
    expect(distance).toHaveLength(deviation.length);
    expect(deviation.length).toBeLessThanOrEqual(Math.min(n, 1200));
    expect([...distance, ...deviation].filter((value) => !Number.isFinite(value))).toEqual([]);
    expect(distance.every((place, k) => place < 0.2 && (k === 0 || place > at(distance, k - 1)))).toBe(true);
    expect(Math.max(...deviation)).toBe(Math.max(...samples));
    expect(Math.min(...deviation)).toBe(Math.min(...samples));
  });
});

describe('speed ripple', () => {
  it('of an axis without fault is none: acceleration and run-in are left out', () => {
    const scene = tunedScene(60, SLOW);
    const found = ripple(scene, jobOf({ scanSpeed: 0.02, scanLength: 0.04 }));
    expect(found.length).toBeCloseTo(0.04, 4);
    expect(found.peak).toBeLessThan(1e-4);
    expect(found.lines.filter(({ cause }) => cause !== null)).toEqual([]);
  });

  // The analysed loop, linear and exact at the samples: a force F at ω moves the table by F |G(jω)|, its speed by ω times that.
  it('shows one cogging force at its period with the amplitude that the loop lets through', () => {
    const [speed, period, force] = [0.02, 0.004, 2];
    const scene = tunedScene(10, { ...SLOW, cogging1: force, cogging1Period: period });
    const { lines } = ripple(scene, jobOf({ scanSpeed: speed, scanLength: 0.06 }));
    const { omega, compliance } = loopAt(scene, speed, period, { cogging1: 0 });
    const expected = (force * magnitude(compliance) * omega) / speed;
    expect(at(lines, 0).cause).toBe('cogging');
    expect(Math.abs(at(lines, 0).period / period - 1)).toBeLessThan(1e-3);
    expect(Math.abs(at(lines, 0).amplitude / expected - 1)).toBeLessThan(0.02);
  });

  // A vertical axis holds its weight F: ripple r makes it r F at a third of the pole pitch, 6π/τ in the equation of force.
  it('shows the force ripple of a motor that holds a weight', () => {
    const [speed, ripple6, polePitch] = [0.02, 0.01, 0.03];
    const scene = tunedScene(10, { ...SLOW, ripple6, polePitch, inclination: Math.PI / 2 });
    const { lines } = ripple(scene, jobOf({ scanSpeed: speed, scanLength: 0.1 }));
    const { omega, compliance } = loopAt(scene, speed, polePitch / 3, { ripple6: 0 });
    const { payload, tableMass, coilMass } = scene.parameters;
    const force = ripple6 * (payload + tableMass + coilMass) * 9.80665;
    const expected = (force * magnitude(compliance) * omega) / speed;
    expect(at(lines, 0).cause).toBe('force ripple, 6th order');
    expect(Math.abs(at(lines, 0).amplitude / expected - 1)).toBeLessThan(0.02);
  });

  // What the loop is told wrongly it follows as far as its T reaches: a at the encoder is a |T| at the table.
  it('shows the interpolation error of the encoder as far as the loop follows it', () => {
    const [speed, signalPeriod, interpolation1] = [0.0004, 2e-5, 1e-8];
    const scene = tunedScene(60, { ...SLOW, interpolation1, signalPeriod });
    const { lines } = ripple(scene, jobOf({ scanSpeed: speed, scanLength: 0.0008 }));
    const { omega, closedLoop } = loopAt(scene, speed, signalPeriod, { interpolation1: 0 });
    const expected = (interpolation1 * magnitude(closedLoop) * omega) / speed;
    expect(at(lines, 0).cause).toBe('interpolation error, once per signal period');
    expect(Math.abs(at(lines, 0).amplitude / expected - 1)).toBeLessThan(0.02);
  });

  // Butterworth of second order: 1/√(1 + (f/f_b)⁴). At 0.4 mm/s a period of 20 µm is 20 Hz.
  it.each([
    [10, 1 / Math.sqrt(17)],
    [20, Math.SQRT1_2],
    [40, 1 / Math.sqrt(1 + 1 / 16)],
  ])('within %d Hz is what a low-pass leaves of a wave of 20 Hz: %d', (rippleBandwidth, share) => {
    const scene = tunedScene(60, { ...SLOW, interpolation1: 1e-8, signalPeriod: 2e-5 });
    const { lines, inBand, peak } = ripple(
      scene,
      jobOf({ scanSpeed: 0.0004, scanLength: 0.002, rippleBandwidth }),
    );
    expect(at(lines, 0).inBand / at(lines, 0).amplitude).toBeCloseTo(share, 3);
    // Nothing else swings: the peak is that of the one wave.
    expect(Math.abs(inBand.peak / peak / share - 1)).toBeLessThan(0.02);
    expect(inBand.deviation.every(Number.isFinite)).toBe(true);
  });

  it('is cut short and slowed down where the travel has no room for it', () => {
    const scene = tunedScene(60, { ...SLOW, travelMin: -0.01, travelMax: 0.01, start: 0 });
    const found = ripple(scene, jobOf({ scanSpeed: 0.5, scanLength: 0.5 }));
    expect(found.speed).toBeLessThan(0.5);
    expect(found.length).toBeGreaterThanOrEqual(0.0099);
    expect(found.length).toBeLessThan(0.02);
  });
});

describe('the plan of a scan', () => {
  it.each([
    [1, 1e-4, 0.2],
    [0.5, 2, 0.005],
    [1e-6, 2, 4],
    [0.1, 0.2, 0.4],
  ])(
    'of %d m/s over %d m keeps inside a travel of %d m and comes to an end',
    (scanSpeed, scanLength, travel) => {
      const half = 0.55 * travel;
      const slow = { acceleration: 1e-3, jerk: 1e-2, travelMin: -half, travelMax: half };
      const { parameters } = tunedScene(60, slow);
      const { from, to, length, runIn, limits } = scanPlan(
        parameters,
        jobOf({ scanSpeed, scanLength, travel }),
      );
      expect(from).toBeGreaterThan(-half);
      expect(to).toBeLessThan(half);
      expect(length).toBeLessThanOrEqual(scanLength);
      expect(limits.speed).toBeLessThanOrEqual(scanSpeed);
      expect((length / limits.speed) * positionRate(parameters)).toBeGreaterThanOrEqual(499);
      // By the profile that the axis is given: what is left at constant speed is run-in and length.
      const profile = new Profile();
      profile.plan(to - from, limits.speed, limits.acceleration, limits.jerk);
      const cruise = 2 * (to - from) - limits.speed * profile.duration;
      expect(Math.abs(cruise / (runIn + length) - 1)).toBeLessThan(1e-6);
      expect(profile.duration).toBeLessThan(25);
    },
  );
});

describe('the cause of a line', () => {
  const SPEED = 0.01;
  const { parameters } = bareScene({
    lead: 0.02,
    polePairs: 4,
    ripple6: 0.01,
    cogging1: 3,
    cogging1Period: 0.00083,
  });
  const terms = periodicTerms(parameters, SPEED);

  // 20 mm of lead and 4 pole pairs: six ripples in each of 4 electrical turns, 24 a turn of the screw.
  it('is that of the term whose period it has, over a length that tells the two apart', () => {
    expect(causeOf(terms, 0.00083, 1)).toBe('cogging');
    expect(causeOf(terms, 0.02 / 24, 1)).toBe('force ripple, 6th order');
    expect(causeOf(terms, 0.00083 / 2, 1)).toBe('2nd harmonic of cogging');
    expect(causeOf(terms, 0.0009, 1)).toBeNull();
  });

  it('names both where the length does not tell them apart', () => {
    expect(causeOf(terms, 0.00083, 0.05)).toBe('cogging or force ripple, 6th order');
  });

  // 20 µm at 0.1 m/s are 5 kHz, which a loop at 8 kHz takes for 3 kHz: 33.3 µm. 10 µm are 10 kHz, taken for 2 kHz: 50 µm.
  it('is folded where the loop samples too slowly', () => {
    const encoder = { interpolation1: 1e-9, interpolation2: 1e-9, signalPeriod: 2e-5 };
    const rates = { currentRate: 16000, positionDivider: 2 };
    const fast = periodicTerms({ ...parameters, ...encoder, ...rates }, 0.1);
    expect(causeOf(fast, 0.1 / 3000, 0.2)).toMatch(/^interpolation error, once .* folded/);
    expect(causeOf(fast, 0.1 / 2000, 0.2)).toMatch(/^interpolation error, twice .* folded/);
    expect(causeOf(fast, 2e-5, 0.2)).toBeNull();
  });

  it('is never a term that is zero', () => {
    expect(causeOf(periodicTerms({ ...parameters, cogging1: 0 }, SPEED), 0.00083, 1)).toBeNull();
  });
});
