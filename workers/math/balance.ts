import { valueAt } from '../../shared/core/at.ts';
import type { Matrix } from './matrix.ts';

/** A state is scaled only where the sum of its two norms falls below this share. */
const WORTHWHILE = 0.95;

/**
 * Scales the states of a square matrix, in place, so that each row has about the norm of its
 * column: A becomes D⁻¹ A D with D of powers of two, so no digit is lost. A state vector mixes
 * nanometres with volts; without this the small ones are lost in rounding. Source: Parlett,
 * Reinsch, Balancing a matrix for calculation of eigenvalues and eigenvectors, Numerische
 * Mathematik 13, 1969.
 *
 * @returns the diagonal of D
 */
export function balance(a: Matrix): Float64Array {
  const n = a.rows;
  const scale = new Float64Array(n).fill(1);
  for (let settled = false; !settled; ) {
    settled = true;
    for (let i = 0; i < n; i++) {
      let column = 0;
      let row = 0;
      for (let j = 0; j < n; j++) {
        if (j === i) continue;
        column += Math.abs(a.get(j, i));
        row += Math.abs(a.get(i, j));
      }
      if (column === 0 || row === 0) continue;
      const factor = 2 ** Math.round(Math.log2(row / column) / 2);
      // Written so that elements that are not finite end the search as well.
      if (!(column * factor + row / factor < WORTHWHILE * (column + row))) continue;
      settled = false;
      scale[i] = valueAt(scale, i) * factor;
      for (let j = 0; j < n; j++) {
        a.set(j, i, a.get(j, i) * factor);
        a.set(i, j, a.get(i, j) / factor);
      }
    }
  }
  return scale;
}
