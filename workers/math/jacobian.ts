import { at } from '../../shared/core/at.ts';
import { Matrix } from './matrix.ts';

/** Writes f of x, n values of n, into `out`. */
type VectorFunction = (x: number[], out: number[]) => void;

/**
 * ∂f/∂x at x by central differences of fourth order: (8 (f(+h) − f(−h)) − (f(+2h) − f(−2h)))/12h.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 25.3.21 once extrapolated
 * (Richardson).
 *
 * @param steps h of each component, in its unit; 0 leaves its column zero
 * @returns n × n, one row for each component of f
 */
export function jacobian(f: VectorFunction, x: readonly number[], steps: readonly number[]): Matrix {
  const n = x.length;
  const result = new Matrix(n, n);
  const moved = x.slice();
  const values = { farBelow: zeros(n), below: zeros(n), above: zeros(n), farAbove: zeros(n) };
  for (const [j, value] of x.entries()) {
    const h = at(steps, j);
    if (h === 0) continue;
    const shifted = (times: number, out: number[]) => {
      moved[j] = value + times * h;
      f(moved, out);
    };
    shifted(-2, values.farBelow);
    shifted(-1, values.below);
    shifted(1, values.above);
    shifted(2, values.farAbove);
    moved[j] = value;
    for (const [i, above] of values.above.entries()) {
      const near = above - at(values.below, i);
      const far = at(values.farAbove, i) - at(values.farBelow, i);
      result.set(i, j, (8 * near - far) / (12 * h));
    }
  }
  return result;
}

function zeros(count: number): number[] {
  return new Array<number>(count).fill(0);
}
