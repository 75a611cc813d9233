/** Root mean square of what is not NaN. */
export function rms(values: Float64Array): number {
  let [sum, count] = [0, 0];
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    sum += value * value;
    count++;
  }
  return count > 0 ? Math.sqrt(sum / count) : 0;
}

/** Largest magnitude of what is not NaN. */
export function largest(values: Float64Array): number {
  let max = 0;
  for (const value of values) if (Math.abs(value) > max) max = Math.abs(value);
  return max;
}
