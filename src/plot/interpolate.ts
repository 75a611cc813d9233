import { valueAt } from '../../shared/core/at.ts';

/**
 * A place on an ascending grid: between `index` and the next, `share` of the way on the logarithmic
 * scale.
 */
interface GridPlace {
  readonly index: number;
  readonly share: number;
}

/** Where a frequency lies on an ascending grid of at least two; held at its ends. */
export function placeOn(grid: Float64Array, frequency: number): GridPlace {
  let [low, high] = [0, grid.length - 1];
  if (frequency <= valueAt(grid, low)) return { index: 0, share: 0 };
  if (frequency >= valueAt(grid, high)) return { index: high - 1, share: 1 };
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (valueAt(grid, middle) <= frequency) low = middle;
    else high = middle;
  }
  const [before, after] = [valueAt(grid, low), valueAt(grid, high)];
  return { index: low, share: Math.log(frequency / before) / Math.log(after / before) };
}

/** A phase, a real part: straight between neighbours. */
export function straight(values: Float64Array, { index, share }: GridPlace): number {
  const before = valueAt(values, index);
  return before + share * (valueAt(values, index + 1) - before);
}

/** A magnitude: a power of frequency between neighbours. */
export function power(values: Float64Array, { index, share }: GridPlace): number {
  return valueAt(values, index) ** (1 - share) * valueAt(values, index + 1) ** share;
}
