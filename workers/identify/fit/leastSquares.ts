/** A column whose part that is not a mixture of the columns before it is smaller than this share of it counts as dependent on them. */
const DEPENDENT = 1e-7;

export interface Solution {
  /** One coefficient a column; 0 for a dependent one. */
  readonly x: Float64Array;
  readonly dependent: readonly boolean[];
}

/**
 * Coefficients that make Σ x_k·column_k nearest to `y` in mean square. Householder reflections on columns scaled to unit length, which is
 * as accurate as the columns allow: no normal equations. Rows from `skipFrom` to below `skipTo` are left out.
 * Source: Golub, Van Loan, Matrix Computations, 4th ed. 2013, 5.2 and 5.3.
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
  const work = columns.map(kept);
  const right = kept(y);
  const scales = work.map((column) => norm(column, 0) || 1);
  work.forEach((column, k) => {
    for (let i = 0; i < column.length; i++) column[i]! /= scales[k]!;
  });

  let rank = 0;
  const rowOf = work.map((column, k) => {
    const length = norm(column, rank);
    if (rank >= column.length || length <= DEPENDENT) return -1;
    reflect(column, rank, length, [...work.slice(k + 1), right]);
    return rank++;
  });

  const x = new Float64Array(columns.length);
  for (let k = columns.length - 1; k >= 0; k--) {
    const row = rowOf[k]!;
    if (row < 0) continue;
    let rest = right[row]!;
    for (let j = k + 1; j < columns.length; j++) rest -= work[j]![row]! * x[j]!;
    x[k] = rest / work[k]![row]!;
  }
  for (let k = 0; k < x.length; k++) x[k]! /= scales[k]!;
  return { x, dependent: rowOf.map((row) => row < 0) };
}

/** Reflects the column so that below `row` nothing is left of it, and the others with it. */
function reflect(column: Float64Array, row: number, length: number, others: readonly Float64Array[]): void {
  const diagonal = column[row]! > 0 ? -length : length;
  const v = column.slice(row);
  v[0]! -= diagonal;
  const square = dot(v, v, 0);
  for (const other of others) {
    const factor = (2 * dot(v, other, row)) / square;
    for (let i = 0; i < v.length; i++) other[row + i]! -= factor * v[i]!;
  }
  column[row] = diagonal;
}

function dot(v: Float64Array, other: Float64Array, from: number): number {
  let sum = 0;
  for (let i = 0; i < v.length; i++) sum += v[i]! * other[from + i]!;
  return sum;
}

function norm(column: Float64Array, from: number): number {
  let sum = 0;
  for (let i = from; i < column.length; i++) sum += column[i]! ** 2;
  return Math.sqrt(sum);
}
