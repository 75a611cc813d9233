import { valueAt } from '../../shared/core/at.ts';

/** Σ a_k b_k over two arrays that are equally long. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += valueAt(a, k) * valueAt(b, k);
  return sum;
}

/** Exchanges two elements. */
export function swap(values: Float64Array, i: number, j: number): void {
  const held = valueAt(values, i);
  values[i] = valueAt(values, j);
  values[j] = held;
}
