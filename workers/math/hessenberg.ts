import { valueAt } from '../../shared/core/at.ts';
import { balance } from './balance.ts';
import { Matrix } from './matrix.ts';

/** A = M H M⁻¹ with H upper Hessenberg: nothing below its first subdiagonal. All are n × n. */
interface HessenbergForm {
  readonly h: Matrix;
  /** M and its inverse: scaling by powers of two, and reflections. */
  readonly m: Matrix;
  readonly inverse: Matrix;
}

/**
 * Balances a square matrix and brings it to Hessenberg form by Householder reflections.
 * Source: Golub, Van Loan, Matrix Computations, 4th ed. 2013, algorithm 7.4.2.
 */
export function hessenbergForm(a: Matrix): HessenbergForm {
  const n = a.rows;
  const h = a.copy();
  const scale = balance(h);
  const q = Matrix.identity(n);
  const v = new Float64Array(n);
  for (let k = 0; k + 2 < n; k++) {
    let norm = 0;
    for (let i = k + 1; i < n; i++) norm = Math.hypot(norm, h.get(i, k));
    if (norm === 0) continue;
    // v = x ± |x| e1, the sign that does not cancel; I − 2 v vᵀ/vᵀv takes x to a multiple of e1.
    let squares = 0;
    for (let i = k + 1; i < n; i++) {
      const x = h.get(i, k);
      const element = i > k + 1 ? x : x + (x < 0 ? -norm : norm);
      v[i] = element;
      squares += element ** 2;
    }
    reflectRows(h, v, k + 1, squares);
    reflectColumns(h, v, k + 1, squares);
    reflectColumns(q, v, k + 1, squares);
    for (let i = k + 2; i < n; i++) h.set(i, k, 0);
  }
  const m = new Matrix(n, n);
  const inverse = new Matrix(n, n);
  for (const [i, factor] of scale.entries()) {
    for (let j = 0; j < n; j++) {
      m.set(i, j, factor * q.get(i, j));
      inverse.set(j, i, q.get(i, j) / factor);
    }
  }
  return { h, m, inverse };
}

/** From the left: rows `from` on. */
function reflectRows(a: Matrix, v: Float64Array, from: number, squares: number): void {
  for (let j = 0; j < a.cols; j++) {
    let sum = 0;
    for (let i = from; i < a.rows; i++) sum += valueAt(v, i) * a.get(i, j);
    const factor = (2 * sum) / squares;
    for (let i = from; i < a.rows; i++) a.add(i, j, -factor * valueAt(v, i));
  }
}

/** From the right: columns `from` on. */
function reflectColumns(a: Matrix, v: Float64Array, from: number, squares: number): void {
  for (let i = 0; i < a.rows; i++) {
    let sum = 0;
    for (let j = from; j < a.cols; j++) sum += a.get(i, j) * valueAt(v, j);
    const factor = (2 * sum) / squares;
    for (let j = from; j < a.cols; j++) a.add(i, j, -factor * valueAt(v, j));
  }
}
