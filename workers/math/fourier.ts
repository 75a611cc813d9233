import { valueAt } from '../../shared/core/at.ts';
import { signOfLife } from '../../shared/core/signOfLife.ts';
import { ComplexArray } from './complexArray.ts';
import { swap } from './vectors.ts';

/**
 * Discrete Fourier transform Σ x_k exp(−2πjnk/N) in place, N a power of two.
 * Source: Cooley, Tukey, Mathematics of Computation 19, 1965; decimation in time.
 *
 * @throws RangeError when N is not a power of two
 */
export function fourier(values: ComplexArray): void {
  const { re, im } = values;
  const n = values.length;
  if (n === 0 || (n & (n - 1)) !== 0) throw new RangeError(`length is ${n}; it must be a power of two.`);
  reverseBits(values);
  const cos = Float64Array.from({ length: n / 2 }, (_, k) => Math.cos((2 * Math.PI * k) / n));
  const sin = Float64Array.from({ length: n / 2 }, (_, k) => -Math.sin((2 * Math.PI * k) / n));
  for (let half = 1; half < n; half *= 2) {
    signOfLife();
    const stride = n / (2 * half);
    for (let start = 0; start < n; start += 2 * half) {
      for (let k = 0; k < half; k++) {
        const i = start + k;
        const j = i + half;
        const c = valueAt(cos, k * stride);
        const s = valueAt(sin, k * stride);
        const [xr, xi, yr, yi] = [valueAt(re, i), valueAt(im, i), valueAt(re, j), valueAt(im, j)];
        const tr = yr * c - yi * s;
        const ti = yr * s + yi * c;
        re[j] = xr - tr;
        im[j] = xi - ti;
        re[i] = xr + tr;
        im[i] = xi + ti;
      }
    }
  }
}

/** Puts each value where its index with the order of its bits reversed says. */
function reverseBits({ re, im, length }: ComplexArray): void {
  for (let i = 1, j = 0; i < length; i++) {
    let bit = length >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      swap(re, i, j);
      swap(im, i, j);
    }
  }
}

/** The smallest power of two that is not below a count. */
export function paddedLength(count: number): number {
  return 2 ** Math.ceil(Math.log2(count));
}

/**
 * Transform of a real record followed by zeros, all `size` values of it.
 *
 * @throws RangeError when the size is not a power of two, or less than the record
 */
export function transformOf(record: ArrayLike<number>, size = paddedLength(record.length)): ComplexArray {
  const values = new ComplexArray(size);
  values.re.set(record);
  fourier(values);
  return values;
}
