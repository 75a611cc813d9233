import { valueAt } from '../../shared/core/at.ts';
import type { Complex } from './complex.ts';
import { ComplexArray } from './complexArray.ts';
import { hessenbergEigenvalues } from './eigenvalues.ts';
import { hessenbergForm } from './hessenberg.ts';
import { Matrix } from './matrix.ts';
import { swap } from './vectors.ts';

/**
 * Response of one output of x⁺ = A x + B u, y = c x to each of its inputs, at any z:
 *
 *   G(z) = c (zI − A)⁻¹ B
 *
 * in n² operations per frequency: Aᵀ is brought to Hessenberg form once, then one elimination
 * serves all inputs. Source: Laub, Efficient multivariable frequency response computations, IEEE
 * Trans. Automatic Control 26(2), 1981.
 */
export class Transfer {
  readonly #n: number;
  readonly #h: Matrix;
  readonly #right: Float64Array;
  readonly #left: Matrix;
  /**
   * zI − H while it is eliminated, row by row, and the unknowns. Kept so that a response allocates
   * neither.
   */
  readonly #work: ComplexArray;
  readonly #x: ComplexArray;

  /**
   * @param a n × n
   * @param b n × m
   * @param c n values
   */
  constructor(a: Matrix, b: Matrix, c: Float64Array) {
    const n = a.rows;
    const { h, m, inverse } = hessenbergForm(a.transposed());
    this.#n = n;
    this.#h = h;
    this.#right = inverse.times(new Matrix(n, 1, Float64Array.from(c))).data;
    this.#left = b.transposed().times(m);
    this.#work = new ComplexArray(n * n);
    this.#x = new ComplexArray(n);
  }

  /** Of A. */
  eigenvalues(): ComplexArray {
    return hessenbergEigenvalues(this.#h);
  }

  /** Response to every input at z, m values. */
  at(z: Complex): Complex[] {
    this.#solve(z);
    return Array.from({ length: this.#left.rows }, (_, input) => this.#response(input));
  }

  /** Response to the first input at z. */
  first(z: Complex): Complex {
    this.#solve(z);
    return this.#response(0);
  }

  #solve(z: Complex): void {
    this.#enter(z);
    this.#eliminate();
    this.#substitute();
  }

  #response(input: number): Complex {
    const { re: xRe, im: xIm } = this.#x;
    let re = 0;
    let im = 0;
    for (let k = 0; k < this.#n; k++) {
      const weight = this.#left.get(input, k);
      re += weight * valueAt(xRe, k);
      im += weight * valueAt(xIm, k);
    }
    return { re, im };
  }

  /** zI − H, and the right-hand side. */
  #enter(z: Complex): void {
    const n = this.#n;
    const { re, im } = this.#work;
    const h = this.#h.data;
    for (let k = 0; k < h.length; k++) re[k] = -valueAt(h, k);
    im.fill(0);
    for (let k = 0; k < h.length; k += n + 1) {
      re[k] = valueAt(re, k) + z.re;
      im[k] = z.im;
    }
    this.#x.re.set(this.#right);
    this.#x.im.fill(0);
  }

  /** To triangular form, the larger of two rows as pivot. */
  #eliminate(): void {
    const n = this.#n;
    const { re, im } = this.#work;
    const { re: xRe, im: xIm } = this.#x;
    for (let k = 0; k + 1 < n; k++) {
      const here = k * n;
      const below = here + n;
      if (size(re, im, below + k) > size(re, im, here + k)) {
        for (let j = k; j < n; j++) {
          swap(re, here + j, below + j);
          swap(im, here + j, below + j);
        }
        swap(xRe, k, k + 1);
        swap(xIm, k, k + 1);
      }
      const pr = valueAt(re, here + k);
      const pi = valueAt(im, here + k);
      const br = valueAt(re, below + k);
      const bi = valueAt(im, below + k);
      const square = pr * pr + pi * pi;
      const fr = (br * pr + bi * pi) / square;
      const fi = (bi * pr - br * pi) / square;
      for (let j = k + 1; j < n; j++) subtract(re, im, below + j, here + j, fr, fi);
      subtract(xRe, xIm, k + 1, k, fr, fi);
    }
  }

  /** The unknowns, last one first. */
  #substitute(): void {
    const n = this.#n;
    const { re, im } = this.#work;
    const { re: xRe, im: xIm } = this.#x;
    for (let i = n - 1; i >= 0; i--) {
      const here = i * n;
      let sr = valueAt(xRe, i);
      let si = valueAt(xIm, i);
      for (let j = i + 1; j < n; j++) {
        const ur = valueAt(re, here + j);
        const ui = valueAt(im, here + j);
        const vr = valueAt(xRe, j);
        const vi = valueAt(xIm, j);
        sr -= ur * vr - ui * vi;
        si -= ur * vi + ui * vr;
      }
      const pr = valueAt(re, here + i);
      const pi = valueAt(im, here + i);
      const square = pr * pr + pi * pi;
      xRe[i] = (sr * pr + si * pi) / square;
      xIm[i] = (si * pr - sr * pi) / square;
    }
  }
}

/** |re| + |im|: as good as the magnitude for choosing a pivot. */
function size(re: Float64Array, im: Float64Array, k: number): number {
  return Math.abs(valueAt(re, k)) + Math.abs(valueAt(im, k));
}

/** From element `to`, element `from` times the factor fr + j fi. */
function subtract(
  re: Float64Array,
  im: Float64Array,
  to: number,
  from: number,
  fr: number,
  fi: number,
): void {
  const ur = valueAt(re, from);
  const ui = valueAt(im, from);
  re[to] = valueAt(re, to) - (fr * ur - fi * ui);
  im[to] = valueAt(im, to) - (fr * ui + fi * ur);
}
