import type { Matrix } from './matrix.ts';

/** Rows and columns whose norms differ by less than this are left alone. */
const WORTHWHILE = 0.95;

/**
 * Scales the states of a square matrix, in place, so that rows and columns have like norms: A becomes D⁻¹ A D with D of powers of two,
 * so no digit is lost. A state vector mixes nanometres with volts; without this the small ones drown.
 * Source: Parlett, Reinsch, Balancing a matrix for calculation of eigenvalues and eigenvectors, Numerische Mathematik 13, 1969.
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
      // Written so that elements that are not finite end it too.
      if (!(column * factor + row / factor < WORTHWHILE * (column + row))) continue;
      settled = false;
      scale[i]! *= factor;
      for (let j = 0; j < n; j++) {
        a.set(j, i, a.get(j, i) * factor);
        a.set(i, j, a.get(i, j) / factor);
      }
    }
  }
  return scale;
}
