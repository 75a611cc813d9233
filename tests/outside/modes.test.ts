import { describe, expect, it } from 'vitest';
import { at } from '../../shared/core/at.ts';
import { flexibleModes, loadSideMass, motorSideMass } from '../../shared/core/movedMass.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import { type Complex, magnitude, minus, ONE, over, plus, scaled } from '../../workers/math/complex.ts';
import { eigenvalues } from '../../workers/math/eigenvalues.ts';
import { jacobian } from '../../workers/math/jacobian.ts';
import { Matrix } from '../../workers/math/matrix.ts';
import { solve } from '../../workers/math/solve.ts';
import { Plant } from '../../workers/model/plant.ts';
import { modesAt, newState, V1, V2, X1, X2 } from '../../workers/model/state.ts';
import { Axis } from '../../workers/run/axis.ts';
import { bareScene } from '../workers/model/sceneOf.ts';

const COLD = { winding: 20, carrier: 20, table: 20, screw: 20 };
/** A lightly damped chain: damping ratios of 0.1 % move a natural frequency by less than a millionth. */
const FREE: ParameterChanges = {
  drive: 'off',
  linkDamping: 0,
  linkStiffness: 4e6,
  coilMass: 2,
  tableMass: 8,
};
const TABLE_MODE: ParameterChanges = {
  mode1: 'table',
  mode1Mass: 1.5,
  mode1Frequency: 70,
  mode1Damping: 1e-3,
};

/** The motion of the plant about rest: positions and speeds of all bodies, y' = A y, and the force on the table. */
function motionOf(changes: ParameterChanges): { a: Matrix; force: Matrix; positions: number[] } {
  const { parameters: p } = bareScene({ ...FREE, payload: 4, ...changes });
  const plant = new Plant(p.motorCount, p.base, flexibleModes(p).length);
  plant.configure(p, COLD);
  const { size } = plant;
  const positions = [X1, X2];
  for (let k = modesAt(p.motorCount, false); k < size; k += 2) positions.push(k);
  const states = positions.flatMap((k) => [k, k + 1]);
  const rates = (x: number[], out: number[]) => {
    plant.terms.process.force = at(x, size);
    plant.listDerivative(0, x, out);
    out[size] = 0;
  };
  const rest = [...plant.initialState(0), 0];
  const steps: number[] = rest.map((_, k) => (positions.includes(k) ? 1e-6 : states.includes(k) ? 1e-3 : 0));
  steps[size] = 1;
  const all = jacobian(rates, rest, steps);
  const pick = (columns: number[]) => Matrix.of(states.map((i) => columns.map((j) => all.get(i, j))));
  return { a: pick(states), force: pick([size]), positions };
}

/** Natural frequencies of the plant, rad/s, ascending, without that of the body as a whole. */
function naturalFrequencies(changes: ParameterChanges): number[] {
  return eigenvalues(motionOf(changes).a)
    .toList()
    .filter(({ im }) => im > 1)
    .map(magnitude)
    .sort((x, y) => x - y);
}

describe('flexible parts against closed solutions', () => {
  it('a free chain of three bodies has the two frequencies of its biquadratic (den Hartog, Mechanical Vibrations, 4th ed. 1956, 5.2, from memory)', () => {
    const [m1, mf] = [2, 1.5];
    const m2 = 12 - mf;
    const [k1, k2] = [4e6, mf * (2 * Math.PI * 70) ** 2];
    // ω⁴ − ω² (k1 (m1 + m2)/(m1 m2) + k2 (m2 + m3)/(m2 m3)) + k1 k2 (m1 + m2 + m3)/(m1 m2 m3) = 0
    const sum = (k1 * (m1 + m2)) / (m1 * m2) + (k2 * (m2 + mf)) / (m2 * mf);
    const product = (k1 * k2 * (m1 + m2 + mf)) / (m1 * m2 * mf);
    const root = Math.sqrt(sum * sum - 4 * product);
    const [low = 0, high = 0, ...none] = naturalFrequencies(TABLE_MODE);
    expect(low / Math.sqrt((sum - root) / 2)).toBeCloseTo(1, 5);
    expect(high / Math.sqrt((sum + root) / 2)).toBeCloseTo(1, 5);
    expect(none).toEqual([]);
  });

  it('on a link that hardly gives, two bodies swing at √(k (1/m + 1/m_f)) (any text on vibrations)', () => {
    const [low = 0] = naturalFrequencies({ ...TABLE_MODE, linkStiffness: 2e9 });
    expect(low / (2 * Math.PI * 70 * Math.sqrt(1 + 1.5 / (14 - 1.5)))).toBeCloseTo(1, 4);
  });

  it('with parts on both sides, the frequencies are the eigenvalues of K over M', () => {
    const found = naturalFrequencies({
      ...TABLE_MODE,
      mode2: 'motor side',
      mode2Mass: 0.3,
      mode2Frequency: 350,
      mode2Damping: 1e-3,
      mode3: 'table',
      mode3Mass: 0.8,
      mode3Frequency: 190,
      mode3Damping: 1e-3,
    });
    const masses = [2 - 0.3, 12 - 1.5 - 0.8, 1.5, 0.3, 0.8];
    const spring = (mass: number, frequency: number) => mass * (2 * Math.PI * frequency) ** 2;
    const springs: [number, number, number][] = [
      [0, 1, 4e6],
      [1, 2, spring(1.5, 70)],
      [0, 3, spring(0.3, 350)],
      [1, 4, spring(0.8, 190)],
    ];
    const system = new Matrix(5, 5);
    for (const [i, j, k] of springs) {
      system.add(i, i, k / at(masses, i));
      system.add(j, j, k / at(masses, j));
      system.add(i, j, -k / at(masses, i));
      system.add(j, i, -k / at(masses, j));
    }
    const expected = eigenvalues(system)
      .toList()
      .map(({ re }) => Math.sqrt(Math.max(re, 0)))
      .filter((omega) => omega > 1)
      .sort((x, y) => x - y);
    expect(expected).toHaveLength(4);
    expect(found).toHaveLength(4);
    for (const [k, omega] of found.entries()) expect(omega / at(expected, k)).toBeCloseTo(1, 5);
  });

  it('a part holds the table at its own frequency, as the damped absorber does (den Hartog, 3.3)', () => {
    const damping = 0.03;
    const { a, force, positions } = motionOf({ ...TABLE_MODE, mode1Damping: damping });
    const table = 2 * positions.indexOf(X2);
    const sizes: number[] = [];
    for (const hertz of [20, 55, 66, 70, 74, 78, 120, 300]) {
      const omega = 2 * Math.PI * hertz;
      const g = hertz / 70;
      // What the part makes of its mass: m_f (1 + 2jDg)/(1 − g² + 2jDg); motor and link hang on the other side.
      const absorber = scaled(
        over({ re: 1, im: 2 * damping * g }, { re: 1 - g * g, im: 2 * damping * g }),
        1.5,
      );
      const beyond = 1 / (1 / 2 - (omega * omega) / 4e6);
      const mass = plus({ re: 12 - 1.5 + beyond, im: 0 }, absorber);
      const expected = scaled(over(ONE, mass), -1 / (omega * omega));
      const found = at(responseTo(a, force, omega), table);
      expect(magnitude(minus(over(found, expected), ONE))).toBeLessThan(1e-6);
      sizes.push(magnitude(found) * omega * omega);
    }
    // Anti-resonance at 70 Hz, resonance a little above it.
    expect(Math.min(...sizes)).toBe(at(sizes, 3));
    expect(at(sizes, 3)).toBeLessThan(at(sizes, 0) / 1.5);
  });
});

/** x of (jω − A) x = b, by a real system of twice the size. */
function responseTo(a: Matrix, b: Matrix, omega: number): Complex[] {
  const n = a.rows;
  const both = new Matrix(2 * n, 2 * n);
  const right = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    right[i] = b.get(i, 0);
    for (let j = 0; j < n; j++) {
      both.set(i, j, -a.get(i, j));
      both.set(n + i, n + j, -a.get(i, j));
    }
    both.set(i, n + i, -omega);
    both.set(n + i, i, omega);
  }
  const x = solve(both, right) ?? right;
  return Array.from({ length: n }, (_, i) => ({ re: at(x, i), im: at(x, n + i) }));
}

describe('flexible parts on the running axis', () => {
  const everything: ParameterChanges = {
    inclination: 0.6,
    base: true,
    baseMass: 200,
    mode1: 'table',
    mode1Mass: 2,
    mode1Frequency: 60,
    mode2: 'motor side',
    mode2Mass: 0.2,
    mode2Frequency: 300,
    mode3: 'table',
    mode3Mass: 0.5,
    mode3Frequency: 900,
  };

  it.each([
    ['a linear motor', {}],
    ['a screw', { lead: 0.02, torqueConstant: 0.5 }],
  ])('of %s on an inclined, soft base leave the energy account in balance', (_, drive) => {
    const axis = new Axis(bareScene({ ...everything, ...drive }));
    for (let k = 0; k < 3000; k++) axis.step();
    expect(axis.trip).toBeNull();
    expect(axis.audit.other).toBeGreaterThan(1e-4);
    expect(Math.abs(axis.audit.relativeResidual)).toBeLessThan(1e-6);
  });

  it('keep the momentum of everything: base and bodies together feel gravity and mounts alone (Newton)', () => {
    const { parameters: p } = bareScene({ ...everything, baseDamping: 0.001, lead: 0.02 });
    const plant = new Plant(p.motorCount, p.base, flexibleModes(p).length);
    plant.configure(p, COLD);
    const y = plant.initialState(0);
    const first = modesAt(p.motorCount, true);
    y[V1] = 0.3;
    y[X2] += 1e-5;
    y[first] = 2e-4;
    y[first + 2] = -1e-4;
    y[first + 5] = 0.2;
    const dy = newState(y.length);
    plant.derivative(0, y, dy);
    const ab = at(dy, first - 1);
    const travelling = p.coilMass / motorSideMass(p);
    const bodies: [number, number][] = [
      [travelling * (motorSideMass(p) - 0.2), at(dy, V1)],
      [travelling * 0.2, at(dy, first + 3)],
      [loadSideMass(p) - 2.5, at(dy, V2)],
      [2, at(dy, first + 1)],
      [0.5, at(dy, first + 5)],
    ];
    const momentum = bodies.reduce((sum, [mass, a]) => sum + mass * (a + ab), p.baseMass * ab);
    const sag = at(y, first - 2);
    const mounts = -p.baseMass * (2 * Math.PI * p.baseFrequency) ** 2 * sag;
    const weight = -(p.coilMass + loadSideMass(p)) * 9.80665 * Math.sin(0.6);
    // At the start the mounts carry the weight, so nothing is left.
    expect(Math.abs(mounts + weight) / Math.abs(weight)).toBeLessThan(1e-12);
    expect(Math.abs(momentum) / Math.abs(weight)).toBeLessThan(1e-9);
  });
});
