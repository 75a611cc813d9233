import { Matrix, solve } from '../../analysis/matrix.ts';
import { leastSquares, type Solution } from './leastSquares.ts';

/** Number of blocks, and Student's t at 97.5 % with one degree of freedom less (tabulated, e.g. Abramowitz & Stegun, table 26.10). */
export interface Blocks {
  readonly count: number;
  readonly quantile: number;
}

export const TWELVE_BLOCKS: Blocks = { count: 12, quantile: 2.201 };
export const TWENTY_FOUR_BLOCKS: Blocks = { count: 24, quantile: 2.0687 };

/** Step of a difference quotient, relative: the cube root of the rounding error. */
const DIFFERENCE = 6e-6;

/** A solution, and the solutions with one block of rows left out each. */
export interface Jackknife extends Solution {
  readonly deleted: readonly Float64Array[];
  readonly blocks: Blocks;
  /** σ² (AᵀA)⁻¹ for white noise in the records; null where there are too few rows to tell it. */
  readonly covariance: Matrix | null;
}

/**
 * Least squares with the delete-block jackknife. The rows are in order (of time or frequency) and left out in contiguous blocks, so that
 * what makes neighbouring residuals alike stays together: the scatter is honest for coloured residuals, unequal ones, and a model that fits
 * some stretches better than others. It errs on the wide side (Efron, Stein, Annals of Statistics 9(3), 1981).
 * Source: Künsch, Annals of Statistics 17(3), 1989; Miller, The jackknife: a review, Biometrika 61, 1974.
 *
 * @param overlap how many rows share the noise of one, since windows overlap
 */
export function jackknife(
  columns: readonly Float64Array[],
  y: Float64Array,
  overlap: number,
  blocks = TWELVE_BLOCKS,
): Jackknife {
  const edge = (block: number) => Math.round((block * y.length) / blocks.count);
  const deleted = Array.from(
    { length: blocks.count },
    (_, block) => leastSquares(columns, y, edge(block), edge(block + 1)).x,
  );
  const solution = leastSquares(columns, y);
  return { ...solution, deleted, blocks, covariance: whiteCovariance(columns, y, solution, overlap) };
}

/**
 * Half-width of the 95 % interval of a figure of the coefficients: by its scatter over the deleted blocks, or by the formula for white noise, which
 * is the surer one when the noise is white. The wider of the two counts.
 */
export function scatter(fit: Jackknife, figure: (x: Float64Array) => number): number {
  return Math.max(blockScatter(fit, figure), whiteScatter(fit, figure));
}

/** Miller's formula, with t. */
export function blockScatter(
  { deleted, blocks: { count, quantile } }: Jackknife,
  figure: (x: Float64Array) => number,
): number {
  const figures = deleted.map(figure);
  const mean = figures.reduce((sum, value) => sum + value, 0) / count;
  const squares = figures.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return quantile * Math.sqrt(((count - 1) / count) * squares);
}

/** √(gᵀ C g) with the gradient g of the figure, and t. */
export function whiteScatter(
  { x, covariance, blocks }: Jackknife,
  figure: (x: Float64Array) => number,
): number {
  if (covariance === null) return 0;
  const gradient = Float64Array.from(x, (value, k) => {
    const step = DIFFERENCE * Math.max(Math.abs(value), Math.sqrt(covariance.get(k, k)));
    const [up, down] = [step, -step].map((shift) => {
      const moved = x.slice();
      moved[k] = value + shift;
      return figure(moved);
    }) as [number, number];
    return step > 0 ? (up - down) / (2 * step) : 0;
  });
  let variance = 0;
  for (let i = 0; i < x.length; i++) {
    for (let j = 0; j < x.length; j++) variance += gradient[i]! * covariance.get(i, j) * gradient[j]!;
  }
  return blocks.quantile * Math.sqrt(variance);
}

/**
 * As in any textbook (e.g. Draper, Smith, Applied Regression Analysis, 3rd ed. 1998, ch. 5), but that only one row in `overlap` brings noise of
 * its own: the sums over the rows scatter by so much more, and that many fewer are there to tell σ from. 0 for dependent columns.
 */
function whiteCovariance(
  columns: readonly Float64Array[],
  y: Float64Array,
  { x, dependent }: Solution,
  overlap: number,
): Matrix | null {
  const kept = columns.flatMap((_, k) => (dependent[k] ? [] : [k]));
  const freedom = 1 - (kept.length * overlap) / y.length;
  if (freedom <= 0) return null;
  const residual = y.map((value, k) => columns.reduce((rest, column, j) => rest - x[j]! * column[k]!, value));
  const variance = (overlap * dot(residual, residual)) / y.length / freedom;
  const scaled = kept.map((k) => {
    const size = Math.sqrt(dot(columns[k]!, columns[k]!));
    return { size, column: columns[k]!.map((value) => value / size) };
  });
  const normal = Matrix.of(scaled.map((a) => scaled.map((b) => dot(a.column, b.column))));
  const covariance = new Matrix(columns.length, columns.length);
  for (const [j, column] of kept.entries()) {
    const inverse = solve(
      normal,
      kept.map((_, i) => (i === j ? 1 : 0)),
    );
    if (inverse === null) return null;
    kept.forEach((row, i) => {
      covariance.set(row, column, (variance * inverse[i]!) / (scaled[i]!.size * scaled[j]!.size));
    });
  }
  return covariance;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!;
  return sum;
}
