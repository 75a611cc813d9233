import { at, valueAt } from '../../shared/core/at.ts';
import { signOfLife } from '../../shared/core/signOfLife.ts';
import { leastSquares } from '../math/leastSquares.ts';
import { mean, sumOfSquares } from '../math/statistics.ts';
import { ranks, risingOrder } from './ranks.ts';

/** Classes of a parameter, at most, and the machines that each must have at least on average. */
const MAX_CLASSES = 50;
const PER_CLASS = 20;

/** How one result depends on each of several inputs. */
interface Dependence {
  readonly shares: readonly number[];
  readonly slopes: readonly number[];
  readonly noise: number;
  readonly explained: number;
}

/*
 * Which inputs make a result vary, from any sample of independent inputs:
 *
 *   S_j = 1 − (N − 1)/(N − M) Σ_m Σ_{k in m} (y_k − ȳ_m)²/Σ_k (y_k − ȳ)²
 *
 * First-order Sobol index, Var E(y | x_j)/Var y, with x_j cut into M classes of equally many: E. Plischke, E. Borgonovo,
 * C. L. Smith, Global sensitivity measures from given data, European J. Operational Research 226 (2013), 536–550. The
 * factor takes away what M means of pure chance would explain (T. L. Kelley, Proc. Nat. Acad. Sci. 21 (1935), 554–559).
 * Shares that are left over belong to parameters that act together, and to noise.
 *
 *   rank y = Σ_j b_j rank x_j,  slope_j = b_j σ(rank x_j)/σ(rank y)
 *
 * Standardised rank regression: R. L. Iman, W. J. Conover, Technometrics 21 (1979), 499–509. It has a sign, and sees only what
 * rises or falls throughout.
 */
export function dependence(inputs: readonly Float64Array[], y: Float64Array): Dependence {
  const n = y.length;
  const classes = Math.max(2, Math.min(MAX_CLASSES, Math.floor(n / PER_CLASS)));
  const whole = sumOfSquares(y, mean(y));
  const isConstant = !(whole > 0);
  const shares = inputs.map((x) => (isConstant ? 0 : explainedBy(x, y, classes, whole)));
  const { slopes, explained } = rankRegression(inputs, y);
  // Twice the standard deviation of a share that is none: that of a mean of squares with M − 1 degrees of freedom.
  return { shares, slopes, explained, noise: (2 * Math.sqrt(2 * (classes - 1))) / n };
}

/** 0 at least: less than nothing is chance. */
function explainedBy(x: Float64Array, y: Float64Array, classes: number, whole: number): number {
  signOfLife();
  const order = risingOrder(x);
  const n = order.length;
  let within = 0;
  for (let m = 0; m < classes; m++) {
    const [from, to] = [Math.floor((m * n) / classes), Math.floor(((m + 1) * n) / classes)];
    const inClass = Float64Array.from(order.subarray(from, to), (k) => valueAt(y, k));
    within += sumOfSquares(inClass, mean(inClass));
  }
  return Math.max(1 - ((n - 1) / (n - classes)) * (within / whole), 0);
}

function rankRegression(
  inputs: readonly Float64Array[],
  y: Float64Array,
): { readonly slopes: readonly number[]; readonly explained: number } {
  const standard = (values: Float64Array) => {
    const ranked = ranks(values);
    const middle = mean(ranked);
    const size = Math.sqrt(sumOfSquares(ranked, middle));
    return ranked.map((rank) => (size > 0 ? (rank - middle) / size : 0));
  };
  const columns = inputs.map(standard);
  const right = standard(y);
  const { x } = leastSquares(columns, right);
  const left = right.map((value, k) =>
    columns.reduce((rest, column, j) => rest - at(x, j) * valueAt(column, k), value),
  );
  const total = sumOfSquares(right);
  return { slopes: [...x], explained: total > 0 ? 1 - sumOfSquares(left) / total : 0 };
}
