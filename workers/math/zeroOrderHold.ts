import { balance } from './balance.ts';
import { Matrix } from './matrix.ts';
import { matrixExponential } from './matrixExponential.ts';

/**
 * What x' = A x + B u makes of its state over `period` seconds while u is held:
 *
 *   x(t + T) = Φ x(t) + Γ u(t)     [Φ Γ; 0 I] = exp([A B; 0 0] T)
 *
 * Exact. Source: Van Loan, Computing integrals involving the matrix exponential, IEEE Trans.
 * Automatic Control 23(3), 1978.
 *
 * @param a n × n
 * @param b n × m
 * @returns Φ, n × n, and Γ, n × m
 */
export function zeroOrderHold(a: Matrix, b: Matrix, period: number): { phi: Matrix; gamma: Matrix } {
  const n = a.rows;
  const balanced = a.copy();
  const scale = balance(balanced);
  const joint = new Matrix(n + b.cols, n + b.cols);
  for (const [i, own] of scale.entries()) {
    for (let j = 0; j < n; j++) joint.set(i, j, balanced.get(i, j) * period);
    for (let j = 0; j < b.cols; j++) joint.set(i, n + j, (b.get(i, j) / own) * period);
  }
  const held = matrixExponential(joint);
  const phi = new Matrix(n, n);
  const gamma = new Matrix(n, b.cols);
  for (const [i, own] of scale.entries()) {
    for (const [j, other] of scale.entries()) phi.set(i, j, (held.get(i, j) * own) / other);
    for (let j = 0; j < b.cols; j++) gamma.set(i, j, held.get(i, n + j) * own);
  }
  return { phi, gamma };
}
