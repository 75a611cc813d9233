import type { Complex } from './complex.ts';
import { type Eigenvalues, hessenbergEigenvalues } from './eigenvalues.ts';
import { hessenbergForm } from './hessenberg.ts';
import { Matrix } from './matrix.ts';

/**
 * Response of one output of x⁺ = A x + B u, y = c x to each of its inputs, at any z:
 *
 *   G(z) = c (zI − A)⁻¹ B
 *
 * in n² operations per frequency: Aᵀ is brought to Hessenberg form once, then one elimination serves all inputs.
 * Source: Laub, Efficient multivariable frequency response computations, IEEE Trans. Automatic Control 26(2), 1981.
 */
export class Transfer {
  private readonly n: number;
  private readonly h: Matrix;
  private readonly right: Float64Array;
  private readonly left: Matrix;
  private readonly re: Float64Array;
  private readonly im: Float64Array;
  private readonly xRe: Float64Array;
  private readonly xIm: Float64Array;

  constructor(a: Matrix, b: Matrix, c: Float64Array) {
    this.n = a.rows;
    const { h, m, inverse } = hessenbergForm(a.transposed());
    this.h = h;
    const column = new Matrix(this.n, 1);
    column.data.set(c);
    this.right = inverse.times(column).data;
    this.left = b.transposed().times(m);
    this.re = new Float64Array(this.n * this.n);
    this.im = new Float64Array(this.n * this.n);
    this.xRe = new Float64Array(this.n);
    this.xIm = new Float64Array(this.n);
  }

  /** Of A. */
  eigenvalues(): Eigenvalues {
    return hessenbergEigenvalues(this.h);
  }

  /** Response to every input at z. */
  at(z: Complex): Complex[] {
    this.eliminate(z);
    this.substitute();
    return Array.from({ length: this.left.rows }, (_, i) => {
      const row = this.left.row(i);
      let re = 0;
      let im = 0;
      for (let k = 0; k < this.n; k++) {
        re += row[k]! * this.xRe[k]!;
        im += row[k]! * this.xIm[k]!;
      }
      return { re, im };
    });
  }

  /** zI − H to triangular form, the larger of two rows as pivot, with the right-hand side. */
  private eliminate(z: Complex): void {
    const { n, re, im, xRe, xIm } = this;
    const h = this.h.data;
    for (let k = 0; k < n * n; k++) re[k] = -h[k]!;
    im.fill(0);
    for (let i = 0; i < n; i++) {
      re[i * n + i]! += z.re;
      im[i * n + i]! += z.im;
    }
    xRe.set(this.right);
    xIm.fill(0);
    for (let k = 0; k + 1 < n; k++) {
      const here = k * n;
      const below = here + n;
      if (
        Math.abs(re[below + k]!) + Math.abs(im[below + k]!) >
        Math.abs(re[here + k]!) + Math.abs(im[here + k]!)
      ) {
        for (let j = k; j < n; j++) {
          swap(re, here + j, below + j);
          swap(im, here + j, below + j);
        }
        swap(xRe, k, k + 1);
        swap(xIm, k, k + 1);
      }
      const pr = re[here + k]!;
      const pi = im[here + k]!;
      const size = pr * pr + pi * pi;
      const fr = (re[below + k]! * pr + im[below + k]! * pi) / size;
      const fi = (im[below + k]! * pr - re[below + k]! * pi) / size;
      for (let j = k + 1; j < n; j++) {
        const ur = re[here + j]!;
        const ui = im[here + j]!;
        re[below + j]! -= fr * ur - fi * ui;
        im[below + j]! -= fr * ui + fi * ur;
      }
      const ur = xRe[k]!;
      const ui = xIm[k]!;
      xRe[k + 1]! -= fr * ur - fi * ui;
      xIm[k + 1]! -= fr * ui + fi * ur;
    }
  }

  private substitute(): void {
    const { n, re, im, xRe, xIm } = this;
    for (let i = n - 1; i >= 0; i--) {
      let sr = xRe[i]!;
      let si = xIm[i]!;
      for (let j = i + 1; j < n; j++) {
        const ur = re[i * n + j]!;
        const ui = im[i * n + j]!;
        sr -= ur * xRe[j]! - ui * xIm[j]!;
        si -= ur * xIm[j]! + ui * xRe[j]!;
      }
      const pr = re[i * n + i]!;
      const pi = im[i * n + i]!;
      const size = pr * pr + pi * pi;
      xRe[i] = (sr * pr + si * pi) / size;
      xIm[i] = (si * pr - sr * pi) / size;
    }
  }
}

function swap(values: Float64Array, i: number, j: number): void {
  const held = values[i]!;
  values[i] = values[j]!;
  values[j] = held;
}
