/**
 * What a time-optimal jerk-limited move is, checked from its definition on random distances and limits over six decades
 * and on the seams between its shapes. The definition is the source; nothing is compared with the formulas of the code.
 */
import { describe, expect, it } from 'vitest';
import { seeded } from '../../../shared/core/seeded.ts';
import { Profile } from '../../../shared/motion/profile.ts';
import { newSetpoint } from '../../../shared/motion/setpoint.ts';

interface Move {
  D: number;
  V: number;
  A: number;
  J: number;
}

/** The shape that a move has: is the acceleration limit, is the speed limit reached? By the bisection below. */
type Shape = 'jerk only' | 'no cruise' | 'acceleration not reached' | 'all seven segments';

/** Rounding of a double, with room for the few operations of one sample. */
const EPS = 8 * Number.EPSILON;

const MOVES = [...randomMoves(3000), ...seams(300)];

function randomMoves(count: number): Move[] {
  const random = seeded(20);
  const decades = () => 10 ** (6 * random() - 3);
  const sign = () => (random() < 0.5 ? -1 : 1);
  return Array.from({ length: count }, () => ({
    D: sign() * decades(),
    V: decades(),
    A: decades(),
    J: decades(),
  }));
}

/** Limits that are just reached, just missed and just passed. */
function seams(count: number): Move[] {
  const random = seeded(21);
  const decades = () => 10 ** (6 * random() - 3);
  const moves: Move[] = [];
  for (let n = 0; n < count; n++) {
    const [A, J] = [decades(), decades()];
    const near = 1 + (n % 3 === 0 ? 0 : (random() - 0.5) * 1e-12);
    const [V, D] = [decades(), decades()];
    // Speed at which the acceleration limit is just reached; distances that leave no cruise and no constant acceleration.
    const Vedge = (A * A) / J;
    const ramp = Vedge < V ? V / A + A / J : 2 * Math.sqrt(V / J);
    moves.push({ D, V: Vedge * near, A, J });
    moves.push({ D: V * ramp * near, V, A, J });
    moves.push({ D: ((2 * A ** 3) / J ** 2) * near, V, A, J });
    moves.push({ D: ((2 * A ** 3) / J ** 2) * near, V: Vedge * near, A, J });
  }
  return moves;
}

/** The largest x in (0, limit] for which `fits` holds, if it holds below some value and not above. */
function largest(limit: number, fits: (x: number) => boolean): number {
  if (fits(limit)) return limit;
  let low = 0;
  let high = limit;
  for (let n = 0; n < 1100 && low < high; n++) {
    const middle = low > 0 ? Math.sqrt(low * high) : high / 1024;
    if (fits(middle)) low = middle;
    else high = middle;
    if (high - low <= Number.EPSILON * high) break;
  }
  return low;
}

/**
 * A ramp to v with peak acceleration α takes v/α + α/J, if α²/J ≤ v; a move with peak speed v takes D/v and one ramp, if
 * both ramps fit in: v·ramp ≤ D. Both only gain by a larger α and a larger v, so the largest that fit are the fastest.
 */
function fastest({ D, V, A, J }: Move): { T: number; shape: Shape } {
  const distance = Math.abs(D);
  const acceleration = (v: number) => largest(A, (x) => x * x <= v * J);
  const ramp = (v: number) => v / acceleration(v) + acceleration(v) / J;
  const v = largest(V, (x) => x * ramp(x) <= distance);
  const full = acceleration(v) === A;
  const shape =
    v === V ? (full ? 'all seven segments' : 'acceleration not reached') : full ? 'no cruise' : 'jerk only';
  return { T: distance / v + ramp(v), shape };
}

/** Times over the whole move, denser where it begins, turns and ends. */
function sampleTimes(T: number, { V, A, J }: Move): number[] {
  const ramp = Math.min(T / 2, V / A + A / J + 2 * Math.sqrt(V / J));
  const times: number[] = [];
  for (let n = 0; n <= 100; n++) {
    const u = n / 100;
    times.push(u * T, u * ramp, T / 2 + (u - 0.5) * ramp, T - u * ramp);
  }
  return times.filter((t) => t >= 0 && t <= T).sort((a, b) => a - b);
}

describe('on random moves over six decades and on the seams', () => {
  it('meets every shape', () => {
    const met = new Map<Shape, number>();
    for (const move of MOVES) {
      const { shape } = fastest(move);
      met.set(shape, (met.get(shape) ?? 0) + 1);
    }
    expect(met.size).toBe(4);
    expect(Math.min(...met.values())).toBeGreaterThan(100);
  });

  it('takes the least time there is', () => {
    const profile = new Profile();
    const random = seeded(22);
    for (const move of MOVES) {
      const { D, V, A, J } = move;
      profile.plan(D, V, A, J);
      expect(Math.abs(profile.duration / fastest(move).T - 1)).toBeLessThan(1e-13);

      // Nor does any other legal move of this family, with its own acceleration and braking, take less.
      for (let n = 0; n < 20; n++) {
        const v = V * random();
        const up = Math.min(A, Math.sqrt(v * J)) * random();
        const down = Math.min(A, Math.sqrt(v * J)) * random();
        const ramps = (v / up + up / J + v / down + down / J) / 2;
        if (v * ramps > Math.abs(D)) continue;
        expect(Math.abs(D) / v + ramps).toBeGreaterThanOrEqual(profile.duration * (1 - EPS));
      }
    }
  });

  it('ends exactly, at rest', () => {
    const profile = new Profile();
    const out = newSetpoint();
    for (const { D, V, A, J } of MOVES) {
      profile.plan(D, V, A, J);
      profile.sample(profile.duration, out);
      expect(out).toEqual({ position: D, speed: 0, acceleration: 0, jerk: 0 });
    }
  });

  it('never passes a limit, and each quantity is the integral of the next without a jump', () => {
    const profile = new Profile();
    const last = newSetpoint();
    const next = newSetpoint();
    const middle = newSetpoint();
    /** Largest excess of each check over what it may be; at most 1. */
    const worst = { speed: 0, acceleration: 0, jerk: 0, overshoot: 0, da: 0, dv: 0, dx: 0, switchings: 0 };
    const note = (check: keyof typeof worst, value: number, bound: number) => {
      worst[check] = Math.max(worst[check], value / bound);
    };

    for (const move of MOVES) {
      const { D, V, A, J } = move;
      profile.plan(D, V, A, J);
      const T = profile.duration;
      // A sample time is itself rounded to eps·T, which moves each quantity by its rate times that.
      const ea = EPS * (A + J * T);
      const ev = EPS * (V + A * T);
      const ex = EPS * (Math.abs(D) + V * T);
      let switchings = 0;
      let time = 0;
      profile.sample(0, last);
      for (const t of sampleTimes(T, move)) {
        const h = t - time;
        profile.sample(t, next);
        profile.sample(time + h / 2, middle);
        note('speed', Math.abs(next.speed), V * (1 + EPS));
        note('acceleration', Math.abs(next.acceleration), A * (1 + EPS));
        note('jerk', Math.abs(next.jerk), J * (1 + EPS));
        note('overshoot', Math.abs(2 * next.position - D), Math.abs(D) * (1 + EPS));
        // Taylor's remainder for a third derivative bounded by J.
        const da = next.acceleration - last.acceleration;
        const dv = next.speed - last.speed - last.acceleration * h;
        const dx = next.position - last.position - last.speed * h - (last.acceleration * h * h) / 2;
        note('da', Math.abs(da), J * h + ea);
        note('dv', Math.abs(dv), (J * h * h) / 2 + ev + ea * h);
        note('dx', Math.abs(dx), (J * h ** 3) / 6 + ex + ev * h + (ea * h * h) / 2);
        // Where the jerk does not switch, the acceleration changes by jerk times time.
        if (Math.abs(da - middle.jerk * h) > 2 * ea) switchings++;
        Object.assign(last, next);
        time = t;
      }
      note('switchings', switchings, 6);
    }
    for (const [check, excess] of Object.entries(worst)) {
      expect(excess, check).toBeGreaterThan(0.9);
      expect(excess, check).toBeLessThanOrEqual(1);
    }
  });

  it('gives back the position when its acceleration is integrated twice', () => {
    const profile = new Profile();
    const out = newSetpoint();
    const random = seeded(23);
    const steps = 2000;
    for (let n = 0; n < 100; n++) {
      const [D, V, A, J] = [random() - 0.5, 0.3 + random(), 1 + 9 * random(), 10 + 90 * random()] as const;
      profile.plan(D, V, A, J);
      const h = profile.duration / steps;
      let [x, v, a] = [0, 0, 0];
      let [worstSpeed, worstPosition] = [0, 0];
      for (let k = 1; k <= steps; k++) {
        profile.sample(k * h, out);
        x += v * h + ((2 * a + out.acceleration) * h * h) / 6;
        v += ((a + out.acceleration) * h) / 2;
        a = out.acceleration;
        worstSpeed = Math.max(worstSpeed, Math.abs(v - out.speed));
        worstPosition = Math.max(worstPosition, Math.abs(x - out.position));
      }
      // The trapezium errs by at most J h²/4 where the jerk switches, six times and once at the end.
      const error = (7 * J * h * h) / 4;
      expect(worstSpeed).toBeLessThan(error + 1e-12);
      expect(worstPosition).toBeLessThan(error * profile.duration + 1e-12);
    }
  });
});
