import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { NormalNoise } from '../../../workers/control/noise.ts';
import { ljungBox } from '../../../workers/identify/fit/goodness.ts';
import { blockScatter, jackknife, whiteScatter } from '../../../workers/identify/fit/jackknife.ts';
import { positionOverForce } from '../../../workers/identify/fit/twoMass.ts';
import { noiseOf, Windows } from '../../../workers/identify/fit/windows.ts';
import { rms } from '../../../workers/math/statistics.ts';

const PERIOD = 1e-3;
const times = Float64Array.from({ length: 1000 }, (_, k) => k * PERIOD);
const windows = new Windows(PERIOD, times.length, 0.02);
const noise = (count: number, seed: number) => {
  const source = new NormalNoise(seed);
  return Float64Array.from({ length: count }, () => source.next());
};

describe('averages over windows', () => {
  /** Relative error of the n-th derivative of tⁿ, which is n!, at so many samples from centre to edge. */
  const error = (half: number, order: number) => {
    const powers = Float64Array.from({ length: 2 * half + 1 }, (_, k) => (k - half) ** order);
    const factorial = at([1, 1, 2, 6, 24], order);
    return Math.abs(at(new Windows(1, powers.length, half).average(powers, order), 0) / factorial - 1);
  };

  it('give derivatives, the better the more samples: φ is smooth to the fifth derivative (Euler and Maclaurin’s formula)', () => {
    expect(error(10, 0)).toBeLessThan(1e-14);
    expect(error(10, 2)).toBeLessThan(1e-5);
    expect(error(80, 2)).toBeLessThan(1e-10);
    for (const [order, rate] of [
      [1, 6],
      [2, 6],
      [3, 4],
      [4, 4],
    ] as const) {
      expect(Math.log2(error(20, order) / error(40, order))).toBeCloseTo(rate, 1);
    }
  });

  it('turn a differential equation into a sum: for x = sin ωt, x″ + ω² x is 0 at any frequency', () => {
    const fine = Float64Array.from({ length: 4000 }, (_, k) => k * 2.5e-4);
    const narrow = new Windows(2.5e-4, fine.length, 0.02);
    for (const frequency of [5, 20, 60]) {
      const omega = 2 * Math.PI * frequency;
      const x = fine.map((t) => Math.sin(omega * t));
      const [position, acceleration] = [narrow.average(x), narrow.average(x, 2)];
      acceleration.forEach((a, k) => {
        expect(Math.abs(a + omega * omega * at(position, k))).toBeLessThan(1e-9 * omega * omega);
      });
    }
  });

  it('pass white noise on as much as they say', () => {
    for (const order of [0, 1, 2, 4]) {
      const passed = rms(new Windows(PERIOD, 200_000, 0.02).average(noise(200_000, 5), order));
      expect(passed / windows.noiseGain(order)).toBeCloseTo(1, 1);
    }
  });

  it('leave gaps open', () => {
    const x = times.map((t, k) => (k === 500 ? Number.NaN : t));
    const open = [...windows.average(x)].flatMap((v, k) => (Number.isNaN(v) ? [windows.centre(k)] : []));
    expect(open.every((centre) => Math.abs(centre - 500) <= windows.half)).toBe(true);
    expect(open).toHaveLength(5);
  });
});

it('the noise of an encoder is told under a motion', () => {
  const moved = noise(20_000, 3).map((n, k) => 0.1 * Math.sin(0.002 * k) + 2e-8 * n);
  expect(noiseOf(moved) / 2e-8).toBeCloseTo(1, 1);
});

describe('the interval of a slope under coloured noise', () => {
  /** Slope over a slow swing, 200 rows, noise that forgets 30 % from row to row. */
  const held = (half: (fit: ReturnType<typeof jackknife>, slope: (x: Float64Array) => number) => number) => {
    let inside = 0;
    for (let seed = 1; seed <= 200; seed++) {
      let state = 0;
      const coloured = noise(200, seed).map((n) => {
        state = 0.7 * state + n;
        return state;
      });
      const swing = coloured.map((_, k) => Math.sin(0.1 * k));
      const fit = jackknife(
        [swing],
        coloured.map((n, k) => n + 3 * at(swing, k)),
        1,
      );
      if (Math.abs(at(fit.x, 0) - 3) <= half(fit, (x) => at(x, 0))) inside++;
    }
    return inside;
  };

  it('holds the truth as often as it says by leaving out blocks', () => {
    expect(held(blockScatter)).toBeGreaterThanOrEqual(180);
    expect(held(blockScatter)).toBeLessThanOrEqual(198);
  });

  it('would not by the formula for white noise', () => {
    expect(held(whiteScatter)).toBeLessThan(150);
  });
});

it('the formula for white noise holds the truth as often as it says when the noise is white', () => {
  let inside = 0;
  for (let seed = 1; seed <= 200; seed++) {
    const y = noise(60, seed);
    const fit = jackknife([y.map((_, k) => Math.sin(0.3 * k))], y, 1);
    if (Math.abs(at(fit.x, 0)) <= whiteScatter(fit, (x) => at(x, 0))) inside++;
  }
  expect(inside).toBeGreaterThanOrEqual(186);
  expect(inside).toBeLessThanOrEqual(199);
});

it('whiteness: χ² with five degrees of freedom passes 15.086 in one of a hundred white series, and coloured ones are found', () => {
  const above = (colour: number) => {
    let count = 0;
    for (let seed = 1; seed <= 500; seed++) {
      let state = 0;
      const series = noise(200, seed).map((n) => {
        state = colour * state + n;
        return state;
      });
      if (present(ljungBox(series)) > 15.086) count++;
    }
    return count;
  };
  expect(above(0)).toBeLessThanOrEqual(14);
  expect(above(0.5)).toBeGreaterThan(490);
});

describe('two masses on a link', () => {
  const free = {
    motorMass: 2,
    motorDamping: 0,
    tableMass: 6,
    stiffness: 6e7,
    damping: 0,
    guideStiffness: 0,
    guideDamping: 0,
  };

  it('are one mass far below their resonance', () => {
    const omega = 10;
    const { re, im } = positionOverForce(omega, free, 'load');
    expect(re * omega * omega * 8).toBeCloseTo(-1, 4);
    expect(im).toBeCloseTo(0, 20);
  });

  it('change sign at √(k (m1 + m2)/(m1 m2)), and the motor stands at √(k/m2)', () => {
    const resonance = Math.sqrt((6e7 * 8) / 12);
    expect(positionOverForce(resonance * 0.999, free, 'load').re).toBeLessThan(0);
    expect(positionOverForce(resonance * 1.001, free, 'load').re).toBeGreaterThan(0);
    expect(positionOverForce(Math.sqrt(6e7 / 6), free, 'motor').re).toBeCloseTo(0, 20);
  });
});
