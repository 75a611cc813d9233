import { Matrix } from './matrix.ts';

/** f of x, written in place. */
export type VectorFunction = (x: number[], out: number[]) => void;

/**
 * ∂f/∂x at x by central differences of fourth order: (8 (f(+h) − f(−h)) − (f(+2h) − f(−2h)))/12h.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 25.3.21 once extrapolated (Richardson).
 *
 * @param steps h of each component, in its unit; 0 leaves its column zero
 */
export function jacobian(f: VectorFunction, x: readonly number[], steps: readonly number[]): Matrix {
  const n = x.length;
  const result = new Matrix(n, n);
  const moved = x.slice();
  const values = [-2, -1, 1, 2].map((times) => ({ times, out: new Array<number>(n).fill(0) }));
  for (let j = 0; j < n; j++) {
    const h = steps[j]!;
    if (h === 0) continue;
    for (const { times, out } of values) {
      moved[j] = x[j]! + times * h;
      f(moved, out);
    }
    moved[j] = x[j]!;
    const [farBelow, below, above, farAbove] = values.map(({ out }) => out) as [
      number[],
      number[],
      number[],
      number[],
    ];
    for (let i = 0; i < n; i++) {
      result.set(i, j, (8 * (above[i]! - below[i]!) - (farAbove[i]! - farBelow[i]!)) / (12 * h));
    }
  }
  return result;
}
