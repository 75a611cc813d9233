import { describe, expect, it } from 'vitest';
import { Profile } from '../../../shared/motion/profile.ts';
import { newSetpoint } from '../../../shared/motion/setpoint.ts';

const profile = new Profile();
const at = (t: number) => {
  const out = newSetpoint();
  profile.sample(t, out);
  return out;
};

describe('published moves from rest to rest', () => {
  // L. Berscheid, T. Kröger, Jerk-limited Real-time Trajectory Generation with Arbitrary Target States, RSS 2021: the
  // durations that the tests of the authors' open-source library publish, to ten decimals, for those of its cases that
  // begin and end at rest. The first two follow by hand too: T = (32 D/J)^(1/3), and 2 t_a + 4 t_j by the quadratic.
  it.each([
    { shape: 'jerk only', D: 1, V: 1, A: 1, J: 1, T: 3.1748021039 },
    { shape: 'no cruise', D: 1, V: 1, A: 1, J: 2, T: 2.5615528128 },
    { shape: 'all seven segments', D: 1, V: 0.6, A: 1, J: 2, T: 2.7666666667 },
    { shape: 'all seven segments, backwards', D: -1, V: 0.6, A: 1, J: 2, T: 2.7666666667 },
    { shape: 'acceleration limit not reached', D: 1, V: 0.4, A: 1, J: 2, T: 3.394427191 },
    { shape: 'the same, large numbers', D: 40000, V: 180000, A: 2e6, J: 2e7, T: 0.4119588818 },
    { shape: 'no distance', D: 0, V: 1, A: 1, J: 1, T: 0 },
  ])('$shape: $T s', ({ D, V, A, J, T }) => {
    profile.plan(D, V, A, J);
    expect(Math.abs(profile.duration - T)).toBeLessThanOrEqual(5e-11);
  });

  // L. Biagiotti, C. Melchiorri, Trajectory Planning for Automatic Machines and Robots, Springer 2008, sec. 3.4, from
  // memory: the rest-to-rest formulas T_j = A/J, T_a = T_j + V/A, T_v = D/V − T_a. The limits are those of its example
  // 3.9 (q 0 to 10, V 5, A 10, J 30), whose own figures begin at speed 1 and therefore do not apply to rest to rest.
  it('passes through the phases of the double S', () => {
    const [D, V, A, J] = [10, 5, 10, 30] as const;
    const Tj = A / J;
    const Ta = Tj + V / A;
    const Tv = D / V - Ta;
    profile.plan(D, V, A, J);
    expect(profile.duration).toBeCloseTo(2 * Ta + Tv, 14);

    const q1 = (J * Tj ** 3) / 6;
    const v1 = (J * Tj ** 2) / 2;
    const endOfJerk = at(Tj);
    expect(endOfJerk.acceleration).toBeCloseTo(A, 13);
    expect(endOfJerk.speed).toBeCloseTo(v1, 13);
    expect(endOfJerk.position).toBeCloseTo(q1, 13);

    const hold = Ta - 2 * Tj;
    const endOfHold = at(Ta - Tj);
    expect(endOfHold.acceleration).toBeCloseTo(A, 13);
    expect(endOfHold.speed).toBeCloseTo(v1 + A * hold, 13);
    expect(endOfHold.position).toBeCloseTo(q1 + v1 * hold + (A * hold ** 2) / 2, 13);

    const cruise = at(Ta + Tv / 2);
    expect(cruise).toMatchObject({ speed: V, jerk: 0 });
    expect(Math.abs(cruise.acceleration)).toBe(0);
    expect(cruise.position).toBeCloseTo(D / 2, 13);

    const brake = at(Ta + Tv + Tj + hold / 2);
    expect(brake.acceleration).toBeCloseTo(-A, 13);
    expect(brake.position).toBeCloseTo(D - (q1 + (v1 * hold) / 2 + (A * hold ** 2) / 8), 13);
    expect(at(profile.duration - Tj / 2).jerk).toBeCloseTo(J, 12);
  });

  // J. Tal, Motion Control Applications, from memory: the copper loss of a move over D in T, against the parabolic speed
  // profile that makes it least (∫a² dt = 12 D²/T³), is 1.125 times for thirds of acceleration, cruise and braking, and
  // 1.3333 times for a triangle. Loss goes with the square of force, the factor is that of ∫a² dt.
  it.each([
    { shape: 'one-third trapezoid', V: 1.5, A: 4.5, ratio: 1.125 },
    { shape: 'triangle', V: 3, A: 4, ratio: 4 / 3 },
  ])('loses $ratio times the least copper loss as a $shape', ({ V, A, ratio }) => {
    profile.plan(1, V, A, 1e9);
    const steps = 20000;
    const h = profile.duration / steps;
    let sum = 0;
    for (let n = 0; n < steps; n++) sum += at((n + 0.5) * h).acceleration ** 2 * h;
    expect(profile.duration).toBeCloseTo(1, 7);
    expect((sum * profile.duration ** 3) / 12).toBeCloseTo(ratio, 3);
  });
});

describe('the ends of a move', () => {
  it('stands before the start and after the end, exactly', () => {
    profile.plan(-0.3, 1, 10, 500);
    expect(at(-1)).toEqual({ position: 0, speed: 0, acceleration: 0, jerk: 0 });
    for (const t of [profile.duration, profile.duration + 1, Infinity]) {
      expect(at(t)).toEqual({ position: -0.3, speed: 0, acceleration: 0, jerk: 0 });
    }
  });

  it('takes a move of no length as done', () => {
    profile.plan(0, 1, 1, 1);
    expect(profile.duration).toBe(0);
    expect(at(0)).toEqual({ position: 0, speed: 0, acceleration: 0, jerk: 0 });
  });

  it('forgets the move before', () => {
    profile.plan(-2, 3, 4, 5);
    profile.plan(0.1, 1, 10, 500);
    const reused = at(0.07);
    const fresh = new Profile();
    fresh.plan(0.1, 1, 10, 500);
    const out = newSetpoint();
    fresh.sample(0.07, out);
    expect(reused).toEqual(out);
  });
});

describe('limits that are no limits', () => {
  it.each([
    ['distance', [Number.NaN, 1, 1, 1]],
    ['distance', [Infinity, 1, 1, 1]],
    ['speed', [1, 0, 1, 1]],
    ['speed', [1, Number.NaN, 1, 1]],
    ['acceleration', [1, 1, -1, 1]],
    ['jerk', [1, 1, 1, 0]],
    ['jerk', [1, 1, 1, Infinity]],
  ] as const)('names the %s', (name, [D, V, A, J]) => {
    const wrong = () => profile.plan(D, V, A, J);
    expect(wrong).toThrow(RangeError);
    expect(wrong).toThrow(name);
  });
});
