import { valueAt } from '../../shared/core/at.ts';
import { signOfLife } from '../../shared/core/signOfLife.ts';
import { leastSquares } from './leastSquares.ts';
import { dot } from './vectors.ts';

/** Writes the residuals at `x` into `out`. */
type Residuals = (x: Float64Array, out: Float64Array) => void;

export interface Minimum {
  readonly x: Float64Array;
  readonly residual: Float64Array;
  /** Derivative of the residuals with respect to each of the unknowns, at x: one array for each. */
  readonly jacobian: readonly Float64Array[];
}

const MAX_STEPS = 200;
/**
 * Relative step of the difference quotient: the cube root of the rounding error, best for the
 * central one.
 */
const DIFFERENCE = 6e-6;

/**
 * Unknowns that minimise the sum of squares of `count` residuals, from a start that is near enough.
 * It ends when a step lowers the sum by no more than `tolerance` of it. Each step solves the damped
 * linear problem by least squares, not by normal equations. Source: Marquardt, SIAM J. Applied
 * Mathematics 11(2), 1963; damping scaled by the columns as in Moré, Lecture Notes in Mathematics
 * 630, 1978.
 */
export function levenbergMarquardt(
  residuals: Residuals,
  start: ArrayLike<number>,
  count: number,
  tolerance = 1e-12,
): Minimum {
  let x = Float64Array.from(start);
  let residual = residualsAt(residuals, x, count);
  let jacobian = jacobianAt(residuals, x, count);
  let damping = 1e-3;
  for (let step = 0; step < MAX_STEPS && damping < 1e12; step++) {
    signOfLife();
    const move = dampedStep(jacobian, residual, damping);
    const next = x.map((value, k) => value + valueAt(move, k));
    const nextResidual = residualsAt(residuals, next, count);
    const before = dot(residual, residual);
    const after = dot(nextResidual, nextResidual);
    if (!(after <= before)) {
      damping *= 4;
      continue;
    }
    x = next;
    residual = nextResidual;
    jacobian = jacobianAt(residuals, x, count);
    damping /= 8;
    if (before - after <= tolerance * before) break;
  }
  return { x, residual, jacobian };
}

function residualsAt(residuals: Residuals, x: Float64Array, count: number): Float64Array {
  const out = new Float64Array(count);
  residuals(x, out);
  return out;
}

function jacobianAt(residuals: Residuals, x: Float64Array, count: number): Float64Array[] {
  return Array.from(x, (value, k) => {
    const h = DIFFERENCE * (Math.abs(value) || 1);
    const shifted = (shift: number) => {
      const moved = x.slice();
      moved[k] = value + shift;
      return residualsAt(residuals, moved, count);
    };
    const up = shifted(h);
    const down = shifted(-h);
    return up.map((r, i) => (r - valueAt(down, i)) / (2 * h));
  });
}

/** Minimises |r + J move|² + damping Σ (|J_k| move_k)². */
function dampedStep(
  jacobian: readonly Float64Array[],
  residual: Float64Array,
  damping: number,
): Float64Array {
  const count = residual.length;
  const size = count + jacobian.length;
  const columns = jacobian.map((column, k) => {
    const out = new Float64Array(size);
    out.set(column);
    out[count + k] = Math.sqrt(damping * dot(column, column));
    return out;
  });
  const right = new Float64Array(size);
  right.set(residual.map((r) => -r));
  return leastSquares(columns, right).x;
}
