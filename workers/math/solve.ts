import { at } from '../../shared/core/at.ts';
import { Matrix } from './matrix.ts';

/**
 * Solves A x = b by elimination with row exchange.
 *
 * @param a n × n
 * @param b n values
 * @returns null when A is singular: no pivot is left that is a number other than 0
 */
export function solve(a: Matrix, b: ArrayLike<number>): Float64Array | null {
  const n = a.rows;
  const work = new Matrix(n, n + 1);
  work.place(a, 0, 0);
  for (let i = 0; i < n; i++) work.set(i, n, at(b, i));
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(work.get(i, k)) > Math.abs(work.get(pivot, k))) pivot = i;
    if (!(Math.abs(work.get(pivot, k)) > 0)) return null;
    if (pivot !== k) {
      const held = work.row(k).slice();
      work.row(k).set(work.row(pivot));
      work.row(pivot).set(held);
    }
    for (let i = k + 1; i < n; i++) {
      const factor = work.get(i, k) / work.get(k, k);
      if (factor !== 0) for (let j = k; j <= n; j++) work.add(i, j, -factor * work.get(k, j));
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let rest = work.get(i, n);
    for (let j = i + 1; j < n; j++) rest -= work.get(i, j) * work.get(j, n);
    work.set(i, n, rest / work.get(i, i));
  }
  return Float64Array.from({ length: n }, (_, i) => work.get(i, n));
}
