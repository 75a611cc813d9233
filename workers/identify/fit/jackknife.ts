import { valueAt } from '../../../shared/core/at.ts';
import { leastSquares, type Solution } from '../../math/leastSquares.ts';
import { Matrix } from '../../math/matrix.ts';
import { solve } from '../../math/solve.ts';
import { mean, sumOfSquares } from '../../math/statistics.ts';
import { dot } from '../../math/vectors.ts';

/**
 * Number of blocks, and Student's t at 97.5 % with one degree of freedom less (tabulated, e.g.
 * Abramowitz & Stegun, table 26.10).
 */
interface Blocks {
  readonly count: number;
  readonly quantile: number;
}

export const TWELVE_BLOCKS: Blocks = { count: 12, quantile: 2.201 };
export const TWENTY_FOUR_BLOCKS: Blocks = { count: 24, quantile: 2.0687 };

/** Relative step of a difference quotient: the cube root of the rounding error. */
const DIFFERENCE = 6e-6;

/** A solution, and the solutions with one block of rows left out of each. */
export interface Jackknife extends Solution {
  readonly deleted: readonly Float64Array[];
  readonly blocks: Blocks;
  /** σ² (AᵀA)⁻¹ for white noise in the records; null where there are too few rows to tell it. */
  readonly covariance: Matrix | null;
}

/**
 * Least squares with the delete-block jackknife. The rows are in order (of time or frequency) and
 * left out in contiguous blocks, so that rows with correlated residuals stay together: the scatter
 * is realistic for coloured residuals, unequal ones, and a model that fits some stretches better
 * than others. It errs on the wide side (Efron, Stein, Annals of Statistics 9(3), 1981). Source:
 * Künsch, Annals of Statistics 17(3), 1989; Miller, The jackknife: a review, Biometrika 61, 1974.
 *
 * @param overlap how many rows share the noise of one, because windows overlap
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
 * Half-width of the 95 % confidence interval of a function of the coefficients: from its scatter
 * over the deleted blocks, or from the formula for white noise, which is more reliable when the
 * noise is white. The wider of the two counts.
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
  return quantile * Math.sqrt(((count - 1) / count) * sumOfSquares(figures, mean(figures)));
}

/** √(gᵀ C g) with the gradient g of the function, and t. */
export function whiteScatter(
  { x, covariance, blocks }: Jackknife,
  figure: (x: Float64Array) => number,
): number {
  if (covariance === null) return 0;
  const gradient = Float64Array.from(x, (value, k) => {
    const step = DIFFERENCE * Math.max(Math.abs(value), Math.sqrt(covariance.get(k, k)));
    const shifted = (shift: number) => {
      const moved = x.slice();
      moved[k] = value + shift;
      return figure(moved);
    };
    return step > 0 ? (shifted(step) - shifted(-step)) / (2 * step) : 0;
  });
  let variance = 0;
  for (const [i, slope] of gradient.entries()) {
    for (const [j, other] of gradient.entries()) variance += slope * covariance.get(i, j) * other;
  }
  return blocks.quantile * Math.sqrt(variance);
}

/**
 * As in any textbook (e.g. Draper, Smith, Applied Regression Analysis, 3rd ed. 1998, ch. 5), except
 * that only one row in `overlap` has independent noise: the sums over the rows scatter more by this
 * factor, and σ is estimated from fewer rows by it. 0 for dependent columns.
 */
function whiteCovariance(
  columns: readonly Float64Array[],
  y: Float64Array,
  { x, dependent }: Solution,
  overlap: number,
): Matrix | null {
  const kept = columns.flatMap((column, place) => {
    if (dependent[place]) return [];
    const size = Math.sqrt(dot(column, column));
    return [{ place, size, unit: column.map((value) => value / size) }];
  });
  const freedom = 1 - (kept.length * overlap) / y.length;
  if (freedom <= 0) return null;
  const residual = y.map((value, k) =>
    columns.reduce((rest, column, j) => rest - valueAt(x, j) * valueAt(column, k), value),
  );
  const variance = (overlap * dot(residual, residual)) / y.length / freedom;
  const normal = Matrix.of(kept.map((a) => kept.map((b) => dot(a.unit, b.unit))));
  const covariance = new Matrix(columns.length, columns.length);
  for (const column of kept) {
    const inverse = solve(
      normal,
      kept.map((row) => (row === column ? 1 : 0)),
    );
    if (inverse === null) return null;
    for (const [i, row] of kept.entries()) {
      covariance.set(row.place, column.place, (variance * valueAt(inverse, i)) / (row.size * column.size));
    }
  }
  return covariance;
}
