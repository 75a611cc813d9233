import { describe, expect, it } from 'vitest';
import { jacobian } from '../../../workers/math/jacobian.ts';
import { Matrix } from '../../../workers/math/matrix.ts';
import { NormalEquations } from '../../../workers/math/normalEquations.ts';
import { solve } from '../../../workers/math/solve.ts';

const rowsOf = (a: Matrix) => Array.from({ length: a.rows }, (_, i) => Array.from(a.row(i)));

describe('a matrix', () => {
  const a = Matrix.of([
    [1, 2, 3],
    [4, 5, 6],
  ]);

  it('multiplies, transposes and is cut as it is written', () => {
    expect(rowsOf(a.times(a.transposed()))).toEqual([
      [14, 32],
      [32, 77],
    ]);
    expect(rowsOf(a.block(0, 1, 2, 2))).toEqual([
      [2, 3],
      [5, 6],
    ]);
    const placed = Matrix.identity(3);
    placed.place(a.block(0, 0, 1, 2), 2, 1);
    expect(rowsOf(placed)).toEqual([
      [1, 0, 0],
      [0, 1, 0],
      [0, 1, 2],
    ]);
  });

  it('refuses an element that it does not have', () => {
    expect(() => a.get(2, 0)).toThrow(RangeError);
    expect(() => a.add(-1, 0, 1)).toThrow(RangeError);
  });
});

describe('linear equations', () => {
  // Inverse of the Hilbert matrix of order 5: whole numbers (e.g. Higham, Accuracy and Stability, 2nd ed. 2002, 28.1).
  it('with a badly conditioned matrix are solved as well as it allows: condition 5e5', () => {
    const n = 5;
    const hilbert = Matrix.of(
      Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => 1 / (i + j + 1))),
    );
    const found = Array.from(solve(hilbert, [1, 0, 0, 0, 0]) ?? []);
    const exact = [25, -300, 1050, -1400, 630];
    expect(found).toHaveLength(n);
    found.forEach((value, k) => {
      expect(Math.abs(value / (exact[k] ?? 0) - 1)).toBeLessThan(5e5 * 2 ** -52);
    });
  });

  it('are solved where the first pivot is 0', () => {
    const swapped = Matrix.of([
      [0, 2],
      [3, 0],
    ]);
    expect(Array.from(solve(swapped, [4, 9]) ?? [])).toEqual([3, 2]);
  });

  it('have no solution where two rows are the same, or a number is missing', () => {
    const twice = [1, 2];
    expect(solve(Matrix.of([twice, twice]), [1, 1])).toBeNull();
    expect(solve(Matrix.of([[Number.NaN]]), [1])).toBeNull();
  });
});

describe('normal equations', () => {
  it('meet a straight line, and miss a bent one by its bend', () => {
    const line = new NormalEquations(2);
    for (const x of [-1, 0, 2]) line.add([1, x], 3 - 2 * x);
    const [offset, slope] = line.solve() ?? [];
    expect(offset).toBeCloseTo(3, 12);
    expect(slope).toBeCloseTo(-2, 12);
    // The best straight line through x² over −1, 0, 1 is its mean.
    const parabola = new NormalEquations(2);
    for (const x of [-1, 0, 1]) parabola.add([1, x], x * x);
    expect(Array.from(parabola.solve() ?? [])).toEqual([2 / 3, 0]);
  });

  it('leave open what one equation cannot tell apart', () => {
    const equations = new NormalEquations(2);
    equations.add([1, 1], 2);
    expect(equations.solve()).toBeNull();
  });
});

it('a Jacobian of polynomials up to the fourth degree is exact but for rounding, and skips what has no step', () => {
  const f = ([x = 0, y = 0]: number[], out: number[]) => {
    out[0] = x ** 4 - 3 * x * y;
    out[1] = 7 * y ** 3;
  };
  const slopes = jacobian(f, [2, 3], [1e-2, 1e-2]);
  expect(slopes.get(0, 0)).toBeCloseTo(4 * 8 - 9, 9);
  expect(slopes.get(0, 1)).toBeCloseTo(-6, 9);
  expect(slopes.get(1, 0)).toBe(0);
  expect(slopes.get(1, 1)).toBeCloseTo(189, 9);
  expect(rowsOf(jacobian(f, [2, 3], [0, 1e-2]))[0]?.[0]).toBe(0);
});
