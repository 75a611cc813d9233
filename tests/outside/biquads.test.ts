import { expect, it } from 'vitest';
import {
  type BiquadCoefficients,
  designLeadLag,
  designLowpass,
  designNotch,
} from '../../shared/axis/loop/biquadDesign.ts';
import { at } from '../../shared/core/at.ts';
import { Biquad } from '../../workers/control/biquad.ts';

const section = (): BiquadCoefficients => ({ b0: 0, b1: 0, b2: 0, a1: 0, a2: 0 });
const values = ({ b0, b1, b2, a1, a2 }: BiquadCoefficients) => [b0, b1, b2, a1, a2];

function expectNear(found: BiquadCoefficients, expected: readonly number[], tolerance: number): void {
  values(found).forEach((value, k) => {
    expect(Math.abs(value - at(expected, k))).toBeLessThan(tolerance);
  });
}

/** |H| at a frequency (Hz). */
function magnitude({ b0, b1, b2, a1, a2 }: BiquadCoefficients, frequency: number, rate: number): number {
  const w = (2 * Math.PI * frequency) / rate;
  const size = (c0: number, c1: number, c2: number) =>
    Math.hypot(c0 + c1 * Math.cos(w) + c2 * Math.cos(2 * w), c1 * Math.sin(w) + c2 * Math.sin(2 * w));
  return size(b0, b1, b2) / size(1, a1, a2);
}

// SciPy, scipy/signal/tests/test_filter_design.py, TestIIRNotch: centre 0.06 of the Nyquist frequency, Q 30, eight digits. It prewarps the width W too,
// which for our damping, prewarped at the centre w, means D = tan(W/2)/sin(w).
it('a full notch has the coefficients of SciPy', () => {
  const w = 0.06 * Math.PI;
  const found = section();
  designNotch(found, 0.03, Math.tan(w / 30 / 2) / Math.sin(w), 0, 1);
  expectNear(found, [0.99686824, -1.9584219, 0.99686824, -1.9584219, 0.99373647], 5e-8);
});

// The same file: 1500 Hz, Q 30, 10 kHz: −3 dB at 1475 and 1525 Hz. The edges are f ± f/(2Q) only nearly.
it('a full notch of 1500 Hz is 3 dB down at 1475 and 1525 Hz', () => {
  const found = section();
  const w = 0.3 * Math.PI;
  designNotch(found, 1500, Math.tan(w / 30 / 2) / Math.sin(w), 0, 10_000);
  for (const edge of [1475, 1525]) {
    expect(Math.abs(20 * Math.log10(magnitude(found, edge, 10_000)) + 3)).toBeLessThan(0.04);
  }
  expect(magnitude(found, 1500, 10_000)).toBeLessThan(1e-12);
});

// The same file, TestBilinear: s = (z − 1)/(z + 1), not prewarped. Prewarped at f, the corner ω of that s is tan(π f/rate).
const unwarped = (omega: number) => Math.atan(omega) / Math.PI;

it('the bilinear transform of a notch is that of SciPy, twelve digits', () => {
  const omega = Math.sqrt(0.174074675307);
  const found = section();
  designNotch(found, unwarped(omega), 0.184605753262 / (2 * omega), 0, 1);
  expectNear(found, [0.864128643219, -1.2157757002, 0.864128643219, -1.2157757002, 0.728257286438], 1e-11);
});

it('the bilinear transform of a low-pass is that of SciPy, twelve digits', () => {
  const omega = Math.sqrt(0.148797327433);
  const found = section();
  designLowpass(found, unwarped(omega), 0.545522368805 / (2 * omega), 1);
  expectNear(found, [0.0878212817591, 0.175642563518, 0.0878212817591, -1.0047722097, 0.35605733674], 1e-11);
});

// Its continuous transfer function at the frequency it is prewarped at: d at the centre of a notch, 1/(2D) at the corner of a low-pass.
it.each([
  [600, 0.5, 0.1],
  [1200, 0.05, 0.3],
  [3900, 1, 0.001],
])('meets what is asked for at %f Hz exactly, damping %f, depth %f', (frequency, damping, depth) => {
  const found = section();
  designNotch(found, frequency, damping, depth, 8000);
  expect(magnitude(found, frequency, 8000)).toBeCloseTo(depth, 11);
  expect(magnitude(found, 0, 8000)).toBeCloseTo(1, 11);
  designLowpass(found, frequency, damping, 8000);
  expect(magnitude(found, frequency, 8000)).toBeCloseTo(1 / (2 * damping), 10);
});

it('the filter of the simulation runs on these coefficients', () => {
  const [filter, designed] = [new Biquad(), section()];
  designNotch(filter, 600, 0.5, 0.1, 8000);
  designNotch(designed, 600, 0.5, 0.1, 8000);
  expect(values(filter)).toEqual(values(designed));
  const { b0, b1, b2, a1, a2 } = designed;
  const y0 = b0;
  const y1 = b1 - a1 * y0;
  expect([filter.step(1), filter.step(0), filter.step(0)]).toEqual([y0, y1, b2 - a1 * y1 - a2 * y0]);
});

/*
 * R. Bristow-Johnson, Cookbook formulae for audio EQ biquad filter coefficients (W3C note, 2021): peaking EQ, A = √gain, α = sin ω/(2Q):
 *   b0 = 1 + αA   b1 = −2 cos ω   b2 = 1 − αA   a0 = 1 + α/A   a1 = −2 cos ω   a2 = 1 − α/A
 * Its poles have the damping D = α/(A sin ω) at the prewarped centre, ours are given by D.
 */
it('a peak has the coefficients of the peaking equaliser', () => {
  const [frequency, rate, gain, q] = [500, 8000, 4, 1.5];
  const omega = (2 * Math.PI * frequency) / rate;
  const A = Math.sqrt(gain);
  const alpha = Math.sin(omega) / (2 * q);
  const expected = [1 + alpha * A, -2 * Math.cos(omega), 1 - alpha * A, -2 * Math.cos(omega), 1 - alpha / A];
  const found = section();
  designNotch(found, frequency, 1 / (2 * q * A), gain, rate);
  expectNear(
    found,
    expected.map((value) => value / (1 + alpha / A)),
    1e-12,
  );
  expect(magnitude(found, frequency, rate)).toBeCloseTo(gain, 11);
});

// Franklin, Powell, Emami-Naeini, Feedback Control of Dynamic Systems, 6th ed. 2010, sec. 6.7: the phase of a lead is largest at the
// geometric mean of its corners, sin φ = (r − 1)/(r + 1), and its gain there √r.
it.each([3, 0.25])('a lead-lag of ratio %f has its phase and gain where they belong', (ratio) => {
  const [frequency, rate] = [120, 8000];
  const found = section();
  designLeadLag(found, frequency, ratio, rate);
  expect(magnitude(found, 0, rate)).toBeCloseTo(1, 11);
  expect(magnitude(found, rate / 2, rate)).toBeCloseTo(ratio, 11);
  expect(magnitude(found, frequency, rate)).toBeCloseTo(Math.sqrt(ratio), 11);
  const { b0, b1, a1 } = found;
  const phase = (f: number) => {
    const w = (2 * Math.PI * f) / rate;
    return (
      Math.atan2(-b1 * Math.sin(w), b0 + b1 * Math.cos(w)) -
      Math.atan2(-a1 * Math.sin(w), 1 + a1 * Math.cos(w))
    );
  };
  expect(Math.sin(phase(frequency))).toBeCloseTo((ratio - 1) / (ratio + 1), 11);
  for (const other of [100, 140]) expect(Math.abs(phase(other))).toBeLessThan(Math.abs(phase(frequency)));
});
