import { valueAt } from '../../shared/core/at.ts';
import type { Complex } from './complex.ts';

/** Complex numbers of a fixed count, their real and imaginary parts in an array each. */
export class ComplexArray {
  readonly re: Float64Array;
  readonly im: Float64Array;

  /** Zeros; or the parts given, which are kept and not copied. Both are equally long. */
  constructor(length: number, re = new Float64Array(length), im = new Float64Array(length)) {
    this.re = re;
    this.im = im;
  }

  static from(values: readonly Complex[]): ComplexArray {
    const result = new ComplexArray(values.length);
    for (const [k, value] of values.entries()) result.set(k, value);
    return result;
  }

  get length(): number {
    return this.re.length;
  }

  /** @throws RangeError when the index lies outside */
  at(k: number): Complex {
    return { re: valueAt(this.re, k), im: valueAt(this.im, k) };
  }

  set(k: number, { re, im }: Complex): void {
    this.re[k] = re;
    this.im[k] = im;
  }

  toList(): Complex[] {
    return Array.from(this.re, (_, k) => this.at(k));
  }

  /** Magnitude of each. */
  magnitudes(): Float64Array {
    return this.re.map((re, k) => Math.hypot(re, valueAt(this.im, k)));
  }

  /** A copy of those from `from` to before `to`. */
  slice(from: number, to: number): ComplexArray {
    const re = this.re.slice(from, to);
    return new ComplexArray(re.length, re, this.im.slice(from, to));
  }
}
