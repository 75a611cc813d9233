/** Where a value lies between `low` (0) and `high` (1); outside it stays at the ends, and NaN counts as the low end. */
export function linearFraction(value: number, low: number, high: number): number {
  return clamp((value - low) / (high - low));
}

/** The same on a scale of decades; zero and below lie at the low end. */
export function logFraction(value: number, low: number, high: number): number {
  return clamp(Math.log(value / low) / Math.log(high / low));
}

function clamp(fraction: number): number {
  return fraction > 0 ? Math.min(fraction, 1) : 0;
}

/** A share in whole per cent; a dash where there is none. */
export function percent(share: number): string {
  return Number.isFinite(share) ? `${Math.round(100 * share)} %` : '—';
}

/** Decimals that show `digits` digits of a quantity whose largest value is `full`. */
export function decimalsFor(full: number, digits: number): number {
  return full > 0 ? Math.min(4, Math.max(0, digits - 1 - Math.floor(Math.log10(full)))) : 0;
}
