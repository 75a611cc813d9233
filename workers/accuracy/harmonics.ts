import { valueAt } from '../../shared/core/at.ts';
import type { Complex } from '../math/complex.ts';

/** Complex amplitudes of the first `count` harmonics of one period, x[n] = Re Σ X_k exp(2πjkn/N), without its mean. */
export function harmonicsOf(x: Float64Array, count: number): Complex[] {
  const n = x.length;
  return Array.from({ length: count }, (_, index) => {
    const step = (2 * Math.PI * (index + 1)) / n;
    let [re, im] = [0, 0];
    for (let i = 0; i < n; i++) {
      re += valueAt(x, i) * Math.cos(step * i);
      im -= valueAt(x, i) * Math.sin(step * i);
    }
    return { re: (2 * re) / n, im: (2 * im) / n };
  });
}

/** One period of `length` samples from the complex amplitudes of its harmonics. */
export function sumOfHarmonics(harmonics: readonly Complex[], length: number): Float64Array {
  const sum = new Float64Array(length);
  for (const [index, { re, im }] of harmonics.entries()) {
    const step = (2 * Math.PI * (index + 1)) / length;
    for (let i = 0; i < length; i++) {
      sum[i] = valueAt(sum, i) + re * Math.cos(step * i) - im * Math.sin(step * i);
    }
  }
  return sum;
}
