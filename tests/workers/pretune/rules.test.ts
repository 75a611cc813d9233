import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { margins } from '../../../workers/analysis/margins.ts';
import { type Complex, over, plus, scaled, times } from '../../../workers/math/complex.ts';
import { logSpaced } from '../../../workers/math/logSpaced.ts';
import { currentBandwidth, magnitudeOptimum } from '../../../workers/pretune/rules/magnitudeOptimum.ts';
import { symmetricalOptimum } from '../../../workers/pretune/rules/symmetricalOptimum.ts';

/*
 * Published figures of Kessler's optima: Umland, Safiuddin, Magnitude and symmetric optimum criterion for the design of linear
 * control systems, IEEE Trans. Industry Applications 26(3), 1990 (from memory). The loops are ideal ones, written out here.
 */

const DEGREE = Math.PI / 180;
const j = (omega: number): Complex => ({ re: 0, im: omega });
const ONE: Complex = { re: 1, im: 0 };

/** Largest output of a step through T(s) = b(s)/a(s), coefficients from the highest power; by classical Runge-Kutta steps. */
function peakOfStep(b: readonly number[], a: readonly number[], until: number): number {
  const n = a.length - 1;
  const lead = at(a, 0);
  const feedback = a.slice(1).map((value) => value / lead);
  const output = [...Array(n + 1 - b.length).fill(0), ...b].slice(1).map((value) => value / lead);
  // Controllable canonical form, the highest derivative first.
  const rate = (x: readonly number[]) => [
    1 - feedback.reduce((sum, value, k) => sum + value * at(x, k), 0),
    ...x.slice(0, n - 1),
  ];
  const moved = (x: readonly number[], v: readonly number[], h: number) =>
    x.map((value, k) => value + h * at(v, k));
  let x: number[] = Array(n).fill(0);
  let peak = 0;
  const h = until / 20_000;
  for (let t = 0; t < until; t += h) {
    const k1 = rate(x);
    const k2 = rate(moved(x, k1, h / 2));
    const k3 = rate(moved(x, k2, h / 2));
    const k4 = rate(moved(x, k3, h));
    x = x.map((value, k) => value + (h / 6) * (at(k1, k) + 2 * at(k2, k) + 2 * at(k3, k) + at(k4, k)));
    peak = Math.max(
      peak,
      output.reduce((sum, value, k) => sum + value * at(x, k), 0),
    );
  }
  return peak;
}

describe('magnitude optimum', () => {
  const T = 3e-3;
  const k = magnitudeOptimum(T);

  it('overshoots by 4.3 % behind a first-order lag', () => {
    expect(peakOfStep([k], [T, 1, k], 40 * T) - 1).toBeCloseTo(0.0432, 3);
  });

  it('leaves 65.5° of phase', () => {
    const loop = (omega: number) => over({ re: k, im: 0 }, times(j(omega), plus(ONE, scaled(j(omega), T))));
    const { phaseMargin } = margins(loop, logSpaced(1, 1e4, 400));
    expect(present(phaseMargin).value / DEGREE).toBeCloseTo(65.5, 1);
  });

  // Flat: |closed loop|⁻² = 1 + c ω⁴ + ..., so that it leaves 1 with the fourth power.
  it.each([
    ['lag', (s: Complex) => plus(ONE, scaled(s, T))],
    ['dead time', (s: Complex) => ({ re: Math.cos(s.im * T), im: Math.sin(s.im * T) })],
  ])('is flat behind a %s', (_name, inverse) => {
    const excess = (omega: number) => {
      const { re, im } = plus(ONE, scaled(times(j(omega), inverse(j(omega))), 1 / k));
      return re * re + im * im - 1;
    };
    const omega = 0.02 / T;
    expect(Math.abs(excess(2 * omega) / excess(omega))).toBeGreaterThan(15);
  });

  it('makes the current loop as fast as its delay of one and a half periods allows: f_c/6π', () => {
    expect(currentBandwidth(16_000)).toBeCloseTo(16_000 / (6 * Math.PI), 9);
  });
});

describe('symmetrical optimum', () => {
  const [M, T] = [7, 2e-3];
  const phaseOf = (a: number) => {
    const { gain, resetTime } = symmetricalOptimum(M, T, a);
    const loop = (omega: number) => {
      const s = j(omega);
      const controller = scaled(over(plus(ONE, scaled(s, resetTime)), scaled(s, resetTime)), gain);
      return over(controller, times(scaled(s, M), plus(ONE, scaled(s, T))));
    };
    const { crossovers, phaseMargin } = margins(loop, logSpaced(0.01 / T, 100 / T, 600));
    return { crossover: at(crossovers, 0), phase: present(phaseMargin).value / DEGREE };
  };
  const closedLoop = (a: number) => {
    const { gain, resetTime } = symmetricalOptimum(M, T, a);
    return {
      numerator: [gain * resetTime, gain],
      denominator: [M * T * resetTime, M * resetTime, gain * resetTime, gain],
    };
  };

  it('with a = 2 overshoots by 43.4 %, and by 8.1 % behind a setpoint filter of the reset time', () => {
    const { numerator, denominator } = closedLoop(2);
    expect(peakOfStep(numerator, denominator, 80 * T) - 1).toBeCloseTo(43.4 / 100, 3);
    // The filter takes away the zero: 4T s + 1 of both.
    expect(peakOfStep(numerator.slice(1), denominator, 80 * T) - 1).toBeCloseTo(0.081, 3);
  });

  it('with a = 2 leaves 36.87° of phase', () => {
    expect(phaseOf(2).phase).toBeCloseTo(36.87, 2);
  });

  it.each([1.5, 2, 3, 6])('with a = %d crosses at 1/(aT), with atan a − atan 1/a of phase', (a) => {
    const { crossover, phase } = phaseOf(a);
    expect(crossover * a * T).toBeCloseTo(1, 9);
    expect(phase).toBeCloseTo((Math.atan(a) - Math.atan(1 / a)) / DEGREE, 6);
  });
});
