import { at, valueAt } from '../../shared/core/at.ts';
import { signOfLife } from '../../shared/core/signOfLife.ts';
import { dot } from './vectors.ts';

/**
 * A column counts as dependent on those before it when less than this share of it is not a mixture
 * of them.
 */
const DEPENDENT = 1e-7;

export interface Solution {
  /** One coefficient for each column; 0 for a dependent one. */
  readonly x: Float64Array;
  readonly dependent: readonly boolean[];
}

/**
 * Coefficients that make Σ x_k·column_k nearest to `y` in mean square. Householder reflections on
 * columns scaled to unit length, which is as accurate as the columns allow: no normal equations.
 * Source: Golub, Van Loan, Matrix Computations, 4th ed. 2013, 5.2 and 5.3.
 *
 * @param columns each as long as `y`
 * @param skipFrom rows from here to before `skipTo` are left out
 */
export function leastSquares(
  columns: readonly Float64Array[],
  y: Float64Array,
  skipFrom = 0,
  skipTo = 0,
): Solution {
  const kept = (column: Float64Array) => {
    const out = new Float64Array(column.length - (skipTo - skipFrom));
    out.set(column.subarray(0, skipFrom));
    out.set(column.subarray(skipTo), skipFrom);
    return out;
  };
  const right = kept(y);
  const work = columns.map((column) => {
    const values = kept(column);
    const scale = norm(values) || 1;
    for (let i = 0; i < values.length; i++) values[i] = valueAt(values, i) / scale;
    return { values, scale };
  });

  let rank = 0;
  const rows = work.map(({ values }, k) => {
    const length = norm(values.subarray(rank));
    if (rank >= values.length || length <= DEPENDENT) return null;
    reflect(values, rank, length, [...work.slice(k + 1).map((other) => other.values), right]);
    return rank++;
  });

  const scaled = new Float64Array(columns.length);
  for (let k = columns.length - 1; k >= 0; k--) {
    const row = at(rows, k);
    if (row === null) continue;
    let rest = valueAt(right, row);
    for (let j = k + 1; j < columns.length; j++)
      rest -= valueAt(at(work, j).values, row) * valueAt(scaled, j);
    scaled[k] = rest / valueAt(at(work, k).values, row);
  }
  return {
    x: scaled.map((value, k) => value / at(work, k).scale),
    dependent: rows.map((row) => row === null),
  };
}

function norm(values: Float64Array): number {
  return Math.sqrt(dot(values, values));
}

/** Reflects a column so that nothing of it is left below `row`, and the others with it. */
function reflect(column: Float64Array, row: number, length: number, others: readonly Float64Array[]): void {
  const first = valueAt(column, row);
  const diagonal = first > 0 ? -length : length;
  const v = column.slice(row);
  v[0] = first - diagonal;
  const square = dot(v, v);
  for (const other of others) {
    signOfLife();
    let sum = 0;
    for (let i = 0; i < v.length; i++) sum += valueAt(v, i) * valueAt(other, row + i);
    const factor = (2 * sum) / square;
    for (let i = 0; i < v.length; i++) other[row + i] = valueAt(other, row + i) - factor * valueAt(v, i);
  }
  column[row] = diagonal;
}
