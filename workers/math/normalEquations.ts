import { valueAt } from '../../shared/core/at.ts';
import { Matrix } from './matrix.ts';
import { solve } from './solve.ts';

/**
 * Linear least squares taken one equation aᵀ x = y at a time, so that a long record need not be
 * kept:
 *
 *   (Σ a aᵀ) x = Σ a y
 *
 * For columns that are far from dependent and of like size, since it squares their condition; see
 * `leastSquares` for others. Source: Golub, Van Loan, Matrix Computations, 4th ed. 2013, 5.3.
 */
export class NormalEquations {
  readonly #normal: Matrix;
  readonly #right: Float64Array;

  constructor(unknowns: number) {
    this.#normal = new Matrix(unknowns, unknowns);
    this.#right = new Float64Array(unknowns);
  }

  /** @param a as many coefficients as there are unknowns */
  add(a: readonly number[], y: number): void {
    for (const [i, row] of a.entries()) {
      this.#right[i] = valueAt(this.#right, i) + row * y;
      for (const [j, column] of a.entries()) this.#normal.add(i, j, row * column);
    }
  }

  /** The unknowns; null where the equations leave them open. */
  solve(): Float64Array | null {
    return solve(this.#normal, this.#right);
  }
}
