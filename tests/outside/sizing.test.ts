import { describe, expect, it } from 'vitest';
import { STEEL_DENSITY, STEEL_MODULUS } from '../../shared/axis/screw.ts';
import { at as elementAt, present } from '../../shared/core/at.ts';
import { defaultParameters } from '../../shared/core/parameters/table.ts';
import { cycleMotion } from '../../shared/motion/cycleMotion.ts';
import { moveLimits } from '../../shared/motion/moveLimits.ts';
import {
  durationFactor,
  meanSquare,
  ramp,
  rms,
  type Stretch,
  squareIntegral,
  steady,
  totalTime,
} from '../../shared/sizing/duty.ts';
import { meanWindingLimit, thermalClass } from '../../shared/sizing/heatFigures.ts';
import {
  areaMoment,
  axialStiffness,
  BENDING_ROOT,
  BUCKLING_LENGTH,
  bendingFrequency,
  elongation,
  eulerLoad,
  referredInertia,
  screwTorque,
  thermalForce,
  twistStiffness,
} from '../../shared/sizing/shaft.ts';
import { sceneOf } from '../workers/model/sceneOf.ts';

const perMinute = (turns: number) => (turns * 2 * Math.PI) / 60;

describe('root mean square of a duty', () => {
  // G. K. Dubey, Fundamentals of Electrical Drives, example 4.2: 25 kN·m for 10 s, 1 s without load, reversal from 200 to −200 1/min in 5 s
  // at 10⁴ kg·m², 1 s, 20 kN·m for 15 s, 1 s, reversal, 1 s. The value is that of its data; the printed one has a slip.
  it('is that of a reversing mill', () => {
    const reversal = (1e4 * 2 * perMinute(200)) / 5;
    expect(Math.abs(reversal - 83776)).toBeLessThan(0.5);
    const torques = [25000, 0, reversal, 0, 20000, 0, reversal, 0];
    const duty = [10, 1, 5, 1, 15, 1, 5, 1].map((time, k) => steady(time, elementAt(torques, k)));
    expect(totalTime(duty)).toBe(39);
    expect(Math.abs(rms(duty) - 45975)).toBeLessThan(0.5);
    expect(Math.abs((rms(duty) * perMinute(200)) / 1e3 - 962.895)).toBeLessThan(0.0006);
  });

  // Of all speed curves over a distance in a time a parabola heats a motor least; a triangle 4/3 times and a trapezoid of thirds 1.125
  // times as much. J. Tal, Step-by-step Design of Motion Control Systems, 1994 (from memory).
  it('has the known ratios between speed curves of one move', () => {
    const [distance, time] = [0.3, 0.7];
    const unit = distance / time ** 2;
    const parabola = [ramp(time, 6 * unit, -6 * unit)];
    expect(meanSquare(parabola) / unit ** 2).toBeCloseTo(12, 12);
    const triangle = [steady(time / 2, 4 * unit), steady(time / 2, -4 * unit)];
    expect(meanSquare(triangle) / meanSquare(parabola)).toBeCloseTo(4 / 3, 12);
    const thirds = [steady(time / 3, 4.5 * unit), steady(time / 3, 0), steady(time / 3, -4.5 * unit)];
    expect(meanSquare(thirds) / meanSquare(parabola)).toBeCloseTo(1.125, 12);
  });

  it('has the same ratio in the moves that are sized, when their corners are sharp', () => {
    const [stroke, moveTime] = [0.3, 0.9];
    const { speed } = moveLimits(stroke, moveTime);
    const parameters = {
      ...defaultParameters(),
      program: 'shuttle' as const,
      start: 0,
      stroke,
      dwell: 0,
      speed,
      acceleration: (3 * speed) / moveTime,
      jerk: 1e5,
    };
    const motion = cycleMotion(sceneOf(parameters));
    const duty = motion.map(({ time, points }): Stretch => {
      const [start, middle, end] = points.map(({ acceleration }) => acceleration) as [number, number, number];
      return { time, start, middle, end };
    });
    expect(totalTime(duty) / 2).toBeCloseTo(moveTime, 4);
    expect(meanSquare(duty) / (12 * (stroke / moveTime ** 2) ** 2)).toBeCloseTo(1.125, 3);
  });

  // Against Simpson's rule in many small steps, which knows nothing of the closed form.
  it('is exact where the quantity runs as a parabola', () => {
    const stretch: Stretch = { time: 1.7, start: -3, middle: 5, end: 2 };
    const at = (u: number) => -3 * (1 - 2 * u) * (1 - u) + 20 * u * (1 - u) + 2 * u * (2 * u - 1);
    const steps = 2000;
    let sum = 0;
    for (let k = 0; k < steps; k++) {
      const [a, m, b] = [k, k + 0.5, k + 1].map((x) => at(x / steps) ** 2) as [number, number, number];
      sum += (a + 4 * m + b) / 6 / steps;
    }
    expect(squareIntegral(stretch)).toBeCloseTo(1.7 * sum, 10);
  });

  // IEC 60034-1, duty type S3: cycles of 10 min, of which ED is under load (from memory: 15, 25, 40 and 60 %).
  it.each([0.15, 0.25, 0.4, 0.6])('of an intermittent duty is √ED of its load: %d', (share) => {
    const [load, rest] = [share * 600, (1 - share) * 600];
    expect(durationFactor(load, rest)).toBeCloseTo(share, 12);
    expect(rms([steady(load, 80), steady(rest, 0)])).toBeCloseTo(80 * Math.sqrt(share), 12);
  });
});

describe('masses and torques through a screw', () => {
  // G. K. Dubey, Fundamentals of Electrical Drives, example 2.1: motor 0.2 kg·m² at 1420 1/min, 10 kg·m² behind a gear of 0.1, and
  // 1000 kg lifted at 1.5 m/s: 0.4 kg·m² at the motor; 10 N·m at the gear (90 %) and the weight (85 %) take 117.53 N·m, with g = 9.81.
  it('refers a lifted mass to the motor', () => {
    const lead = (2 * Math.PI * 1.5) / perMinute(1420);
    const inertia = 0.2 + 0.1 ** 2 * 10 + referredInertia(1000, lead);
    expect(Math.abs(inertia - 0.4)).toBeLessThan(0.005);
    const torque = (0.1 * 10) / 0.9 + screwTorque(1000 * 9.81, lead, 0.85);
    expect(Math.abs(torque - 117.53)).toBeLessThan(0.006);
  });

  // T. H. Wentzell, Machine Design, example 18.4: 2900 lbf on a ball screw of 0.5 in lead, T = 0.177 F L, which is η = 0.9: 256.65 in·lbf.
  // 0.177 is 1/(2π 0.9) to three digits.
  it('gives the torque of a ball screw', () => {
    expect(Math.abs(screwTorque(2900, 0.5, 0.9) / 256.65 - 1)).toBeLessThan(0.002);
  });
});

describe('a screw as a bar', () => {
  // J. M. Gere, Mechanics of Materials, example 11-1: steel column, E = 29,000 ksi, I = 21.7 in⁴, 25 ft, both ends held: 276 kip.
  it('buckles at Euler’s load', () => {
    expect(Math.abs(eulerLoad(29000, 21.7, 300, BUCKLING_LENGTH.fixedFixed) - 276)).toBeLessThan(0.5);
  });

  // The lowest root of tan u = u is the buckling load of a column that is fixed and supported: P = u² E I/l² (Gere, ch. 11).
  it('has the effective length of a column that is fixed and supported', () => {
    const u = rootOf((x) => Math.sin(x) - x * Math.cos(x), 4, 4.7);
    expect(u).toBeCloseTo(4.4934, 4);
    expect(Math.abs(Math.PI / u - BUCKLING_LENGTH.fixedSupported)).toBeLessThan(5e-4);
  });

  // Euler's case of one free end: cos u = 0, P = u² E I/l², a quarter of the load with two hinges (Gere, ch. 11).
  it('has twice its length where one end is free', () => {
    const u = rootOf(Math.cos, 1, 2);
    expect(Math.PI / u).toBeCloseTo(BUCKLING_LENGTH.fixedFree, 12);
    expect(eulerLoad(1, 1, 1, BUCKLING_LENGTH.fixedFree)).toBeCloseTo(Math.PI ** 2 / 4, 12);
  });

  // Handbook form A E/l: 30 mm root, 1000 mm, 2.06·10⁵ N/mm²: 145.61 N/µm held at one end, four times that midway between two.
  it('is as stiff as A E/l', () => {
    const rigidity = 2.06e11 * (Math.PI / 4) * 0.03 ** 2;
    expect(Math.abs(axialStiffness(rigidity, 1) / 1e6 - 145.61)).toBeLessThan(0.01);
    expect(Math.abs((2 * axialStiffness(rigidity, 0.5)) / 1e6 - 582.45)).toBeLessThan(0.02);
  });

  // J. M. Gere, Mechanics of Materials, example 3-1 (from memory): 250 lb·ft on 54 in of 1.5 in, G = 11.5·10⁶ psi, twist it by 0.02834.
  it('twists under a torque', () => {
    expect(Math.abs((250 * 12) / twistStiffness(11.5e6, 1.5, 54) - 0.02834)).toBeLessThan(1e-5);
  });

  // Steel, 11.7·10⁻⁶/K (handbook value): 1 m grows by 35.1 µm in 3 K.
  it('grows with heat', () => {
    expect(elongation(11.7e-6, 1, 3)).toBeCloseTo(35.1e-6, 12);
  });

  // R. C. Hibbeler, Mechanics of Materials, example 4.10 (from memory): a steel bar of 0.5 in by 0.5 in, E = 29,000 ksi, α = 6.60·10⁻⁶/°F,
  // just fits between two rigid supports at 60 °F; at 120 °F it presses on them with 2.871 kip.
  it('presses on what keeps it at its length', () => {
    expect(Math.abs(thermalForce(29000 * 0.25, 6.6e-6, 60) - 2.871)).toBeLessThan(5e-4);
  });

  // I = π d⁴/64: Gere, appendix.
  it('has the moment of area of a round section', () => {
    expect(areaMoment(2)).toBeCloseTo(Math.PI / 4, 14);
  });
});

describe('whipping of a shaft', () => {
  // Frequency equations of a beam, e.g. R. D. Blevins, Formulas for Natural Frequency and Mode Shape, table 8-1.
  it('has the roots of the frequency equations', () => {
    const supported = rootOf((x) => Math.sin(x) * Math.cosh(x) - Math.cos(x) * Math.sinh(x), 3.5, 4.5);
    const fixed = rootOf((x) => Math.cos(x) * Math.cosh(x) - 1, 4, 5);
    expect(Math.abs(supported - BENDING_ROOT.fixedSupported)).toBeLessThan(5e-5);
    expect(Math.abs(fixed - BENDING_ROOT.fixedFixed)).toBeLessThan(5e-5);
    const free = rootOf((x) => Math.cos(x) * Math.cosh(x) + 1, 1.5, 2.5);
    expect(Math.abs(free - BENDING_ROOT.fixedFree)).toBeLessThan(5e-5);
  });

  // The equation of the beam itself, E I w'''' = ρ A ω² w, integrated along the shaft: no table and no closed form.
  it.each([
    ['fixedSupported', 0, 2],
    ['fixedFixed', 0, 1],
    ['fixedFree', 2, 3],
  ] as const)('is that of the equation of the beam: %s', (ends, first, second) => {
    const shaft = { diameter: 0.017, length: 0.7, modulus: STEEL_MODULUS, density: STEEL_DENSITY };
    const expected = bendingFrequency(shaft, BENDING_ROOT[ends]);
    const stiffness = STEEL_MODULUS * areaMoment(shaft.diameter);
    const perLength = (STEEL_DENSITY * Math.PI * shaft.diameter ** 2) / 4;
    const mismatch = (frequency: number) => {
      const load = perLength * (2 * Math.PI * frequency) ** 2;
      const [a, b] = [shoot([0, 0, 1, 0]), shoot([0, 0, 0, 1])];
      return elementAt(a, first) * elementAt(b, second) - elementAt(a, second) * elementAt(b, first);

      /** Deflection, slope, moment and shear at the far end, by the classical Runge-Kutta rule. */
      function shoot(start: readonly number[]): readonly number[] {
        const slope = ([w, theta, moment, shear]: readonly number[]) =>
          [present(theta), present(moment) / stiffness, present(shear), load * present(w)] as const;
        const moved = (y: readonly number[], k: readonly number[], h: number) =>
          y.map((value, n) => value + h * elementAt(k, n));
        const steps = 400;
        const h = shaft.length / steps;
        let y = start;
        for (let step = 0; step < steps; step++) {
          const k1 = slope(y);
          const k2 = slope(moved(y, k1, h / 2));
          const k3 = slope(moved(y, k2, h / 2));
          const k4 = slope(moved(y, k3, h));
          y = y.map(
            (value, n) =>
              value +
              (h / 6) * (elementAt(k1, n) + 2 * elementAt(k2, n) + 2 * elementAt(k3, n) + elementAt(k4, n)),
          );
        }
        return y;
      }
    };
    const found = rootOf(mismatch, 0.8 * expected, 1.2 * expected);
    expect(Math.abs(found / expected - 1)).toBeLessThan(1e-4);
  });
});

// IEC 60085: thermal classes 105 (A), 120 (E), 130 (B), 155 (F), 180 (H).
it.each([
  [105, 'A'],
  [120, 'E'],
  [130, 'B'],
  [155, 'F'],
  [180, 'H'],
] as const)('%i °C is thermal class %s', (limit, letter) => {
  expect(thermalClass(limit)).toBe(letter);
});

// IEC 60034-1 (from memory): over air of 40 °C, by resistance, class B may rise by 80 K, F by 105 K, H by 125 K. No class is used up by
// the mean: 10 to 15 K are left to the hottest spot.
it.each([
  [130, 80],
  [155, 105],
  [180, 125],
])('a winding of class %i °C may rise by %i K in the mean', (limit, rise) => {
  expect(meanWindingLimit(limit)).toBe(40 + rise);
  expect(limit - 40 - rise).toBeGreaterThanOrEqual(10);
  expect(limit - 40 - rise).toBeLessThanOrEqual(15);
  expect(meanWindingLimit(limit + 1)).toBeNull();
});

/** A root between two ends of different sign, by halving. */
function rootOf(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  const sign = Math.sign(f(low));
  expect(sign * Math.sign(f(high))).toBe(-1);
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (Math.sign(f(middle)) === sign) low = middle;
    else high = middle;
  }
  return low;
}
