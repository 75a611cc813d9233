const MANTISSAS = [1, 2, 5, 10];

/** The least number of the row 1, 2, 5, 10, 20, ... (and 0.5, 0.2, ...) that is not below `size`. */
export function stepAtLeast(size: number): number {
  const power = Math.floor(Math.log10(size));
  const mantissa = MANTISSAS.find((m) => m * 10 ** power >= size * (1 - 1e-9))!;
  return Number(`${mantissa}e${power}`);
}

/** The whole numbers k for which k·step lies in [low, high], as the first and the last of them. */
export function tickRange(low: number, high: number, step: number): readonly [first: number, last: number] {
  const slack = 1e-6;
  return [Math.ceil(low / step - slack), Math.floor(high / step + slack)];
}

/** Decimals that print every multiple of `step` without rounding it. */
export function decimalsOf(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}
