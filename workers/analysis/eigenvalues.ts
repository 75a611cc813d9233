import type { Matrix } from './matrix.ts';

export interface Eigenvalues {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Steps on one eigenvalue before the shift is changed, and before giving up; two or three are usual. */
const STEPS_TO_CHANGE = 10;
const MAX_STEPS = 100;

/**
 * Eigenvalues of an upper Hessenberg matrix by Francis's implicit double-shift QR steps.
 * Source: Martin, Peters, Wilkinson, The QR algorithm for real Hessenberg matrices, Numerische Mathematik 14, 1970.
 * @throws RangeError when an element is not finite, or when it does not converge
 */
export function hessenbergEigenvalues(hessenberg: Matrix): Eigenvalues {
  if (!hessenberg.data.every(Number.isFinite)) {
    throw new RangeError('The matrix of the loop has elements that are not finite.');
  }
  const h = hessenberg.copy();
  const re = new Float64Array(h.rows);
  const im = new Float64Array(h.rows);
  let last = h.rows - 1;
  let steps = 0;
  while (last >= 0) {
    const first = startOfBlock(h, last);
    if (first === last) {
      re[last] = h.get(last, last);
      last--;
      steps = 0;
    } else if (first === last - 1) {
      solvePair(h, first, re, im);
      last -= 2;
      steps = 0;
    } else {
      if (++steps > MAX_STEPS) throw new RangeError('The eigenvalues of the loop could not be found.');
      francisStep(h, first, last, steps % STEPS_TO_CHANGE === 0);
    }
  }
  return { re, im };
}

/** First row of the unreduced block that ends at `last`; a negligible subdiagonal above it is cleared. */
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

function solvePair(h: Matrix, k: number, re: Float64Array, im: Float64Array): void {
  const half = (h.get(k, k) - h.get(k + 1, k + 1)) / 2;
  const product = h.get(k, k + 1) * h.get(k + 1, k);
  const discriminant = half * half + product;
  const root = Math.sqrt(Math.abs(discriminant));
  if (discriminant < 0) {
    re[k] = h.get(k + 1, k + 1) + half;
    re[k + 1] = re[k]!;
    im[k] = root;
    im[k + 1] = -root;
    return;
  }
  // The root further from the corner element first; the nearer one from the product, without cancellation.
  const far = half + (half < 0 ? -root : root);
  re[k] = h.get(k + 1, k + 1) + far;
  re[k + 1] = far === 0 ? re[k]! : h.get(k + 1, k + 1) - product / far;
}

/** One step on the block first..last. `exceptional` shifts break the rare cycles. */
function francisStep(h: Matrix, first: number, last: number, exceptional: boolean): void {
  const at = (i: number, j: number) => h.get(i, j);
  // The shifts are the eigenvalues of [a ·; · b], c the product of the other two elements.
  let [a, b, c] = [at(last - 1, last - 1), at(last, last), at(last - 1, last) * at(last, last - 1)];
  if (exceptional) {
    const s = Math.abs(at(last, last - 1)) + Math.abs(at(last - 1, last - 2));
    [a, b, c] = [0.75 * s, 0.75 * s, -0.4375 * s * s];
  }
  let start = last - 1;
  let [x, y, z] = [0, 0, 0];
  // The step starts as low as two small subdiagonals in a row allow: from above them the shift would drown in rounding on its way down.
  do {
    start--;
    const [h00, h10] = [at(start, start), at(start + 1, start)];
    // First column of (H − s1)(H − s2), over h10; differences before products, or equal eigenvalues would cancel to nothing.
    x = ((a - h00) * (b - h00) - c) / h10 + at(start, start + 1);
    y = at(start + 1, start + 1) - h00 - (a - h00) - (b - h00);
    z = at(start + 2, start + 1);
  } while (start > first && !mayStartAt(h, start, x, y, z));
  for (let k = start; k < last; k++) {
    const size = k + 2 <= last ? 3 : 2;
    reflect(h, k, size, start, first, last, x, y, size === 3 ? z : 0);
    x = h.get(k + 1, k);
    y = k + 2 <= last ? h.get(k + 2, k) : 0;
    z = k + 3 <= last ? h.get(k + 3, k) : 0;
  }
}

/** True when what a step that starts at k leaves outside the Hessenberg form is a rounding. */
function mayStartAt(h: Matrix, k: number, x: number, y: number, z: number): boolean {
  const around = Math.abs(h.get(k - 1, k - 1)) + Math.abs(h.get(k, k)) + Math.abs(h.get(k + 1, k + 1));
  return Math.abs(h.get(k, k - 1)) * (Math.abs(y) + Math.abs(z)) <= Number.EPSILON * Math.abs(x) * around;
}

/** Reflection that takes (x, y, z) to a multiple of e1, on rows and columns k to k + size − 1. */
function reflect(
  h: Matrix,
  k: number,
  size: number,
  start: number,
  first: number,
  last: number,
  x: number,
  y: number,
  z: number,
): void {
  const norm = Math.hypot(x, y, z);
  if (norm === 0) return;
  const v0 = x + (x < 0 ? -norm : norm);
  const v1 = y / v0;
  const v2 = z / v0;
  const beta = 2 / (1 + v1 * v1 + v2 * v2);
  if (k === start && k > first) h.set(k, k - 1, h.get(k, k - 1) * (1 - beta));
  for (let j = k > start ? k - 1 : k; j <= last; j++) {
    const third = size === 3 ? h.get(k + 2, j) : 0;
    const w = beta * (h.get(k, j) + v1 * h.get(k + 1, j) + v2 * third);
    h.add(k, j, -w);
    h.add(k + 1, j, -w * v1);
    if (size === 3) h.set(k + 2, j, third - w * v2);
  }
  const bottom = Math.min(k + 3, last);
  for (let i = first; i <= bottom; i++) {
    const third = size === 3 ? h.get(i, k + 2) : 0;
    const w = beta * (h.get(i, k) + v1 * h.get(i, k + 1) + v2 * third);
    h.add(i, k, -w);
    h.add(i, k + 1, -w * v1);
    if (size === 3) h.set(i, k + 2, third - w * v2);
  }
}
