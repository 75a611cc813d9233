const MANTISSAS = [1, 2, 5];

/**
 * The smallest number of the row 1, 2, 5, 10, 20, ... (and 0.5, 0.2, ...) that is not below `size`.
 */
export function stepAtLeast(size: number): number {
  const power = Math.floor(Math.log10(size));
  const mantissa = MANTISSAS.find((m) => m * 10 ** power >= size * (1 - 1e-9)) ?? 10;
  return Number(`${mantissa}e${power}`);
}

/** The whole numbers k for which k·step lies in [low, high], as the first and the last of them. */
export function tickRange(low: number, high: number, step: number): readonly [first: number, last: number] {
  const slack = 1e-6;
  return [Math.ceil(low / step - slack), Math.floor(high / step + slack)];
}

/** Every multiple of `step` in [low, high], ascending. */
export function multiplesOf(step: number, low: number, high: number): number[] {
  const [first, last] = tickRange(low, high, step);
  return Array.from({ length: Math.max(last - first + 1, 0) }, (_, k) => (first + k) * step);
}

/** A tick of a logarithmic scale: a digit times a power of ten. */
export interface DecadeTick {
  readonly value: number;
  readonly digit: number;
  /** Exponent of ten. */
  readonly power: number;
}

/** Every digit times a power of ten in [low, high], ascending; both ends above zero. */
export function decadeTicks(low: number, high: number): DecadeTick[] {
  const found: DecadeTick[] = [];
  for (let power = Math.floor(Math.log10(low) + 1e-9); 10 ** power <= high * (1 + 1e-9); power++) {
    for (let digit = 1; digit < 10; digit++) {
      const value = Number(`${digit}e${power}`);
      if (value >= low * (1 - 1e-9) && value <= high * (1 + 1e-9)) found.push({ value, digit, power });
    }
  }
  return found;
}

/** Decimals that print every multiple of `step` without rounding it. */
export function decimalsOf(step: number): number {
  return Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
}
