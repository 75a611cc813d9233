import { Matrix } from './matrix.ts';

/** Norm up to which the series is summed, and its last power: 0.5^16/16! lies below rounding. */
const SERIES_NORM = 0.5;
const SERIES_TERMS = 16;

/**
 * exp(A) of an n × n matrix by its series: A is halved until its norm is small, and the sum squared
 * as often. Source: method 3 of Moler, Van Loan, Nineteen dubious ways to compute the exponential
 * of a matrix, twenty-five years later, SIAM Review 45(1), 2003.
 */
export function matrixExponential(a: Matrix): Matrix {
  const n = a.rows;
  let norm = 0;
  for (let i = 0; i < n; i++)
    norm = Math.max(
      norm,
      a.row(i).reduce((sum, value) => sum + Math.abs(value), 0),
    );
  const halvings = Math.max(0, Math.ceil(Math.log2(norm / SERIES_NORM)));
  const step = a.mapped((value) => value / 2 ** halvings);

  // Horner: I + A (I + A/2 (I + A/3 (...)))
  let result = Matrix.identity(n);
  for (let k = SERIES_TERMS; k >= 1; k--) {
    result = step.times(result).mapped((value) => value / k);
    for (let i = 0; i < n; i++) result.add(i, i, 1);
  }
  for (let k = 0; k < halvings; k++) result = result.times(result);
  return result;
}
