import { describe, expect, it } from 'vitest';
import { at, present } from '../../shared/core/at.ts';
import { type BristleConstants, BristleFriction } from '../../workers/model/friction/bristles.ts';
import { TickSolver } from '../../workers/solver/tickSolver.ts';

/*
 * The published parameter set and experiments of Canudas de Wit, Olsson, Åström, Lischinsky, A New Model for Control of Systems with
 * Friction, IEEE Trans. Automatic Control 40(3), 1995, Table I and sec. III. "Read" values are readings of the figures of an open
 * re-implementation (github.com/auralius/LuGre); "converged" ones are SciPy Radau at rtol 1e-10 of the same set-up.
 */
const PUBLISHED: BristleConstants = {
  coulomb: 1,
  breakaway: 1.5,
  stribeckSpeed: 0.001,
  bristleStiffness: 1e5,
  bristleDamping: Math.sqrt(1e5),
  dampingFadeSpeed: 1e9,
  viscous: 0.4,
};
const MASS = 1;
const UNCAPPED = 1e15;

function publishedFriction(): BristleFriction {
  const friction = new BristleFriction();
  friction.set(PUBLISHED, UNCAPPED);
  return friction;
}

function evaluated(friction: BristleFriction, v: number, z: number): BristleFriction {
  friction.evaluate(v, z);
  return friction;
}

/** A mass on bristles under a force that depends on time and position: state x, v, z, t. */
function slide(force: (t: number, x: number) => number, span: number) {
  const friction = publishedFriction();
  const y = [0, 0, 0, 0];
  const solver = new TickSolver(
    (_t, [x, v, z, t], d) => {
      friction.evaluate(present(v), present(z));
      d[0] = present(v);
      d[1] = (force(present(t), present(x)) - friction.force) / MASS;
      d[2] = friction.deflectionRate;
      d[3] = 1;
    },
    span,
    [1e-9, 1e-9, 1e-9, 1e-9],
    [1e-12, 1e-11, 1e-14, 1e-9],
  );
  return {
    y,
    advance: () => solver.advance(y, y),
    frictionForce: () => evaluated(friction, at(y, 1), at(y, 2)).force,
  };
}

describe('LuGre friction, published set-up', () => {
  it('has the steady curve g(v) + σ2 v', () => {
    const friction = publishedFriction();
    const speeds = [1e-4, 5e-4, 1e-3, 2e-3, 5e-3, 1e-2, 0.1, 1];
    const expected = [1.49506492, 1.38960039, 1.18433972, 1.00995782, 1.002, 1.004, 1.04, 1.4];
    speeds.forEach((v, i) => {
      const g = 1 + 0.5 * Math.exp(-((v / 1e-3) ** 2));
      const z = g / 1e5;
      friction.evaluate(v, z);
      expect(friction.deflectionRate).toBeCloseTo(0, 12);
      expect(friction.force).toBeCloseTo(at(expected, i), 6);
    });
  });

  it('runs through the presliding loop without breaking away, and closes it', () => {
    const corners = [0, 10, 15, 35, 40, 60, 65];
    const forces = [0, 1.425, 1.425, -1.425, -1.425, 1.425, 1.425];
    const ramp = (t: number) => {
      const k = Math.min(
        corners.findLastIndex((corner) => corner <= t),
        corners.length - 2,
      );
      const [t0, t1, f0, f1] = [at(corners, k), at(corners, k + 1), at(forces, k), at(forces, k + 1)];
      return f0 + ((f1 - f0) * (t - t0)) / (t1 - t0);
    };
    const mass = slide(ramp, 0.005);
    const ends: number[] = [];
    for (let k = 1; k <= 65 / 0.005; k++) {
      mass.advance();
      if (corners.some((corner) => corner > 0 && Math.abs(k * 0.005 - corner) < 1e-9))
        ends.push(at(mass.y, 0));
    }
    const read = { max: 45e-6, min: -10e-6, tolerance: 1e-6 };
    expect(Math.abs(Math.max(...ends) - read.max)).toBeLessThan(read.tolerance);
    expect(Math.abs(Math.min(...ends) - read.min)).toBeLessThan(read.tolerance);
    const converged = [4.4858e-5, 4.5312e-5, -9.5635e-6, -1.00174e-5, 4.4858e-5, 4.5312e-5];
    converged.forEach((x, i) => {
      expect(Math.abs(at(ends, i) - x)).toBeLessThan(2e-9);
    });
    expect(Math.abs(at(ends, 4) - at(ends, 0))).toBeLessThan(1e-9);
  });

  it('sticks and slips when pulled through a spring', () => {
    const mass = slide((t, x) => 2 * (0.1 * t - x), 0.001);
    const starts: number[] = [];
    let fastest = 0;
    let strongest = 0;
    let slipping = false;
    for (let k = 1; k <= 27000; k++) {
      mass.advance();
      const [, v, , t] = mass.y;
      if (present(v) > 0.01 && !slipping) starts.push(present(t));
      slipping = present(v) > 0.01;
      fastest = Math.max(fastest, present(v));
      strongest = Math.max(strongest, mass.frictionForce());
    }
    [7.458, 13.8207, 20.1834, 26.5461].forEach((start, i) => {
      expect(Math.abs(at(starts, i) - start)).toBeLessThan(0.0015);
    });
    expect(Math.abs(fastest - 0.37)).toBeLessThan(0.01);
    expect(fastest).toBeCloseTo(0.369816, 5);
    expect(strongest).toBeCloseTo(1.476573, 3);
  });

  it('breaks away at a lower force the faster the force rises', () => {
    const rates = [1, 2, 5, 10, 20, 30];
    const converged = [1.43242, 1.39442, 1.31321, 1.21995, 1.09861, 1.02448];
    rates.forEach((rate, i) => {
      const mass = slide((t) => rate * t, 1e-4);
      let before = 0;
      let now = 0;
      while (now >= before) {
        before = now;
        mass.advance();
        now = mass.frictionForce();
      }
      expect(Math.abs(before - at(converged, i))).toBeLessThan(2e-4);
    });
  });

  it('builds up with the time constant g/(σ0 v) at constant speed', () => {
    const friction = publishedFriction();
    const v = 0.002;
    expect(evaluated(friction, v, 0).force).toBeCloseTo(0.633256, 6);
    const g = 1 + 0.5 * Math.exp(-4);
    const slope =
      (evaluated(friction, v, 1e-6).deflectionRate - evaluated(friction, v, 0).deflectionRate) / 1e-6;
    expect(-1 / slope).toBeCloseTo(g / (1e5 * v), 12);
    expect(-1 / slope).toBeCloseTo(0.005045789, 9);
  });
});
