/** Smallest and largest of all values; 0 and 1 without any. */
export function rangeOf(...values: readonly (readonly number[])[]): readonly [low: number, high: number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const row of values) {
    for (const value of row) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  }
  return low <= high ? [low, high] : [0, 1];
}
