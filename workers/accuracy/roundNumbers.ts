const STEPS = [1, 2, 5] as const;

/** The k-th of the numbers …, 0.5, 1, 2, 5, 10, …; number 0 is 1. */
export function roundNumber(k: number): number {
  const decade = Math.floor(k / STEPS.length);
  return Number(`${STEPS[k - decade * STEPS.length]}e${decade}`);
}

/**
 * Index of the smallest of these numbers that is not below a value. A rounding error of the value
 * does not select the next one.
 */
export function roundUpIndex(value: number): number {
  const decade = Math.floor(Math.log10(value)) - 1;
  let k = decade * STEPS.length;
  while (roundNumber(k) < value * (1 - 1e-9)) k++;
  return k;
}
