import { balance } from './balance.ts';
import { Matrix } from './matrix.ts';

/** Norm up to which the series is summed, and its last power: 0.5^16/16! lies below rounding. */
const SERIES_NORM = 0.5;
const SERIES_TERMS = 16;

/**
 * What x' = A x + B u makes of its state over `period` seconds while u is held:
 *
 *   x(t + T) = Φ x(t) + Γ u(t)     [Φ Γ; 0 I] = exp([A B; 0 0] T)
 *
 * Exact: Van Loan, Computing integrals involving the matrix exponential, IEEE Trans. Automatic Control 23(3), 1978.
 */
export function zeroOrderHold(a: Matrix, b: Matrix, period: number): { phi: Matrix; gamma: Matrix } {
  const n = a.rows;
  const scaled = a.copy();
  const scale = balance(scaled);
  const joint = new Matrix(n + b.cols, n + b.cols);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) joint.set(i, j, scaled.get(i, j) * period);
    for (let j = 0; j < b.cols; j++) joint.set(i, n + j, (b.get(i, j) / scale[i]!) * period);
  }
  const over = exponential(joint);
  const phi = new Matrix(n, n);
  const gamma = new Matrix(n, b.cols);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) phi.set(i, j, (over.get(i, j) * scale[i]!) / scale[j]!);
    for (let j = 0; j < b.cols; j++) gamma.set(i, j, over.get(i, n + j) * scale[i]!);
  }
  return { phi, gamma };
}

/**
 * exp(A), by its series after halving until the norm is small, then squared back. Source: method 3 of Moler, Van Loan, Nineteen dubious
 * ways to compute the exponential of a matrix, SIAM Review 45(1), 2003.
 */
export function exponential(a: Matrix): Matrix {
  const n = a.rows;
  let norm = 0;
  for (let i = 0; i < n; i++)
    norm = Math.max(
      norm,
      a.row(i).reduce((sum, value) => sum + Math.abs(value), 0),
    );
  const halvings = Math.max(0, Math.ceil(Math.log2(norm / SERIES_NORM)));
  const step = a.copy();
  for (let k = 0; k < step.data.length; k++) step.data[k]! /= 2 ** halvings;

  // Horner: I + A (I + A/2 (I + A/3 (...)))
  let result = Matrix.identity(n);
  for (let k = SERIES_TERMS; k >= 1; k--) {
    result = step.times(result);
    for (let i = 0; i < result.data.length; i++) result.data[i]! /= k;
    for (let i = 0; i < n; i++) result.add(i, i, 1);
  }
  for (let k = 0; k < halvings; k++) result = result.times(result);
  return result;
}
