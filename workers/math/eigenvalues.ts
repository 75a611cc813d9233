import { signOfLife } from '../../shared/core/signOfLife.ts';
import { ComplexArray } from './complexArray.ts';
import { hessenbergForm } from './hessenberg.ts';
import type { Matrix } from './matrix.ts';

/**
 * Steps on one eigenvalue before the shift is changed, and before giving up; two or three are
 * usual.
 */
const STEPS_TO_CHANGE = 10;
const MAX_STEPS = 100;

/**
 * Eigenvalues of a square matrix, in no particular order.
 *
 * @throws RangeError when an element is not finite, or when the search does not converge
 */
export function eigenvalues(a: Matrix): ComplexArray {
  return hessenbergEigenvalues(hessenbergForm(a).h);
}

/**
 * Eigenvalues of an upper Hessenberg matrix by Francis's implicit double-shift QR steps. Source:
 * Martin, Peters, Wilkinson, The QR algorithm for real Hessenberg matrices, Numerische Mathematik
 * 14, 1970.
 *
 * @throws RangeError when an element is not finite, or when the search does not converge
 */
export function hessenbergEigenvalues(hessenberg: Matrix): ComplexArray {
  if (!hessenberg.data.every(Number.isFinite)) {
    throw new RangeError('The matrix of the loop has elements that are not finite.');
  }
  const h = hessenberg.copy();
  const values = new ComplexArray(h.rows);
  let last = h.rows - 1;
  let steps = 0;
  while (last >= 0) {
    signOfLife();
    const first = startOfBlock(h, last);
    if (first === last) {
      values.re[last] = h.get(last, last);
      last--;
      steps = 0;
    } else if (first === last - 1) {
      solvePair(h, first, values);
      last -= 2;
      steps = 0;
    } else {
      if (++steps > MAX_STEPS) throw new RangeError('The eigenvalues of the loop could not be found.');
      francisStep(h, first, last, shiftsOf(h, last, steps));
    }
  }
  return values;
}

/**
 * First row of the unreduced block that ends at `last`; a negligible subdiagonal above it is
 * cleared.
 */
function startOfBlock(h: Matrix, last: number): number {
  for (let k = last; k > 0; k--) {
    const around = Math.abs(h.get(k - 1, k - 1)) + Math.abs(h.get(k, k));
    const below = Math.abs(h.get(k, k - 1));
    if (below <= Number.EPSILON * around || below < Number.MIN_VALUE / Number.EPSILON) {
      h.set(k, k - 1, 0);
      return k;
    }
  }
  return 0;
}

/** The two eigenvalues of the block on rows k and k + 1. */
function solvePair(h: Matrix, k: number, values: ComplexArray): void {
  const corner = h.get(k + 1, k + 1);
  const half = (h.get(k, k) - corner) / 2;
  const product = h.get(k, k + 1) * h.get(k + 1, k);
  const discriminant = half * half + product;
  const root = Math.sqrt(Math.abs(discriminant));
  if (discriminant < 0) {
    values.set(k, { re: corner + half, im: root });
    values.set(k + 1, { re: corner + half, im: -root });
    return;
  }
  // The root further from the corner element first; the nearer one from the product, without
  // cancellation.
  const far = half + (half < 0 ? -root : root);
  values.re[k] = corner + far;
  values.re[k + 1] = far === 0 ? corner + far : corner - product / far;
}

/** The shifts of a step are the eigenvalues of [a ·; · b], c the product of the other two elements. */
interface Shifts {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

const cornerShifts = (h: Matrix, last: number): Shifts => ({
  a: h.get(last - 1, last - 1),
  b: h.get(last, last),
  c: h.get(last - 1, last) * h.get(last, last - 1),
});

/** The eigenvalues of the corner, and what ends a search that lasts longer than usual. */
function shiftsOf(h: Matrix, last: number, steps: number): Shifts {
  if (steps % STEPS_TO_CHANGE === 0) return changedShifts(h, last, steps);
  const corner = cornerShifts(h, last);
  return steps < 2 * STEPS_TO_CHANGE ? corner : nearerTwice(corner);
}

/**
 * Where the shifts are real, only the one that is nearer to the end of the corner: between two complex pairs each may lie near
 * another pair, and both together lead to neither. Source: LAPACK, dlahqr.
 */
function nearerTwice({ a, b, c }: Shifts): Shifts {
  const half = (a - b) / 2;
  const discriminant = half * half + c;
  if (discriminant < 0) return { a, b, c };
  const far = half + (half < 0 ? -1 : 1) * Math.sqrt(discriminant);
  const shift = far === 0 ? b : b - c / far;
  return { a: shift, b: shift, c: 0 };
}

/**
 * What breaks the rare cycles, by turns around zero and around the corner element: where two pairs of eigenvalues are nearly the
 * same, only the second does.
 */
function changedShifts(h: Matrix, last: number, steps: number): Shifts {
  const s = Math.abs(h.get(last, last - 1)) + Math.abs(h.get(last - 1, last - 2));
  const middle = steps % (2 * STEPS_TO_CHANGE) === 0 ? h.get(last, last) : 0;
  return { a: middle + 0.75 * s, b: middle + 0.75 * s, c: -0.4375 * s * s };
}

/** First column of a QR step: what lies in three rows from `start` on. */
interface Column {
  readonly start: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** One step with these shifts on the block first..last. */
function francisStep(h: Matrix, first: number, last: number, shifts: Shifts): void {
  let { start, x, y, z } = firstColumn(h, first, last, shifts);
  for (let k = start; k < last; k++) {
    const isThree = k + 2 <= last;
    const leftColumn = k > start ? k - 1 : k;
    const v = householder(x, y, isThree ? z : 0);
    if (v !== null) {
      // Above the first rows of the step only the one subdiagonal element is left to be reflected.
      if (k === start && k > first) h.set(k, k - 1, h.get(k, k - 1) * (1 - v.beta));
      reflectRows(h, v, k, isThree, leftColumn, last);
      reflectColumns(h, v, k, isThree, first, Math.min(k + 3, last));
    }
    x = h.get(k + 1, k);
    y = isThree ? h.get(k + 2, k) : 0;
    z = k + 3 <= last ? h.get(k + 3, k) : 0;
  }
}

/**
 * Where a step starts, and with what: as low as two small subdiagonals in a row allow. From above
 * them the shift would be lost in rounding on its way down.
 */
function firstColumn(h: Matrix, first: number, last: number, { a, b, c }: Shifts): Column {
  for (let start = last - 2; ; start--) {
    const h00 = h.get(start, start);
    const h10 = h.get(start + 1, start);
    // First column of (H − s1)(H − s2), over h10; differences before products, or equal eigenvalues
    // would cancel.
    const x = ((a - h00) * (b - h00) - c) / h10 + h.get(start, start + 1);
    const y = h.get(start + 1, start + 1) - h00 - (a - h00) - (b - h00);
    const z = h.get(start + 2, start + 1);
    if (start <= first || mayStartAt(h, start, x, y, z)) return { start, x, y, z };
  }
}

/** True when what a step that starts at k leaves outside the Hessenberg form is below rounding. */
function mayStartAt(h: Matrix, k: number, x: number, y: number, z: number): boolean {
  const around = Math.abs(h.get(k - 1, k - 1)) + Math.abs(h.get(k, k)) + Math.abs(h.get(k + 1, k + 1));
  return Math.abs(h.get(k, k - 1)) * (Math.abs(y) + Math.abs(z)) <= Number.EPSILON * Math.abs(x) * around;
}

/** The reflection I − β v vᵀ with v = (1, v1, v2). */
interface Reflection {
  readonly v1: number;
  readonly v2: number;
  readonly beta: number;
}

/**
 * The one that takes (x, y, z) to a multiple of (1, 0, 0); null for zeros, where there is nothing
 * to do.
 */
function householder(x: number, y: number, z: number): Reflection | null {
  const norm = Math.hypot(x, y, z);
  if (norm === 0) return null;
  const v0 = x + (x < 0 ? -norm : norm);
  const v1 = y / v0;
  const v2 = z / v0;
  return { v1, v2, beta: 2 / (1 + v1 * v1 + v2 * v2) };
}

/** From the left: three rows from k on, or two, in the columns `from` to `to`. */
function reflectRows(
  h: Matrix,
  { v1, v2, beta }: Reflection,
  k: number,
  isThree: boolean,
  from: number,
  to: number,
): void {
  for (let j = from; j <= to; j++) {
    const third = isThree ? h.get(k + 2, j) : 0;
    const w = beta * (h.get(k, j) + v1 * h.get(k + 1, j) + v2 * third);
    h.add(k, j, -w);
    h.add(k + 1, j, -w * v1);
    if (isThree) h.set(k + 2, j, third - w * v2);
  }
}

/** From the right: three columns from k on, or two, in the rows `from` to `to`. */
function reflectColumns(
  h: Matrix,
  { v1, v2, beta }: Reflection,
  k: number,
  isThree: boolean,
  from: number,
  to: number,
): void {
  for (let i = from; i <= to; i++) {
    const third = isThree ? h.get(i, k + 2) : 0;
    const w = beta * (h.get(i, k) + v1 * h.get(i, k + 1) + v2 * third);
    h.add(i, k, -w);
    h.add(i, k + 1, -w * v1);
    if (isThree) h.set(i, k + 2, third - w * v2);
  }
}
