/*
 * Coefficients of a second-order section (b0 + b1 z⁻¹ + b2 z⁻²)/(1 + a1 z⁻¹ + a2 z⁻²), that is
 *
 *   y = b0 x + b1 x₋₁ + b2 x₋₂ − a1 y₋₁ − a2 y₋₂
 *
 * designed by the bilinear transform, prewarped so that the frequency asked for is met exactly
 * (Franklin, Powell, Workman, Digital Control of Dynamic Systems, sec. 6.1).
 */
export interface BiquadCoefficients {
  b0: number;
  b1: number;
  b2: number;
  a1: number;
  a2: number;
}

/** (s² + 2 depth D ω s + ω²)/(s² + 2 D ω s + ω²), ω = 2π frequency (Hz), sampled at rate (Hz), into `out`; a peak with depth > 1. */
export function designNotch(
  out: BiquadCoefficients,
  frequency: number,
  damping: number,
  depth: number,
  rate: number,
): void {
  design(out, 1, depth * damping, 1, damping, frequency, rate);
}

/** ω²/(s² + 2 D ω s + ω²), ω = 2π frequency (Hz), sampled at rate (Hz), into `out`. */
export function designLowpass(
  out: BiquadCoefficients,
  frequency: number,
  damping: number,
  rate: number,
): void {
  design(out, 0, 0, 1, damping, frequency, rate);
}

/**
 * (1 + √r s/ω)/(1 + s/(√r ω)), ω = 2π frequency (Hz), sampled at rate (Hz), into `out`: gain 1 far below, r far above, √r at ω, where the
 * phase is largest. Of first order, so that b2 and a2 are zero.
 */
export function designLeadLag(out: BiquadCoefficients, frequency: number, ratio: number, rate: number): void {
  const c = 1 / Math.tan((Math.PI * frequency) / rate);
  const root = Math.sqrt(ratio);
  const a0 = 1 + c / root;
  out.b0 = (1 + c * root) / a0;
  out.b1 = (1 - c * root) / a0;
  out.b2 = 0;
  out.a1 = (1 - c / root) / a0;
  out.a2 = 0;
}

/** (n2 s² + 2 n1 s + n0)/(s² + 2 D s + 1) with s in units of ω. */
function design(
  out: BiquadCoefficients,
  n2: number,
  n1: number,
  n0: number,
  damping: number,
  frequency: number,
  rate: number,
): void {
  const c = 1 / Math.tan((Math.PI * frequency) / rate);
  const a0 = c * c + 2 * damping * c + 1;
  out.b0 = (n2 * c * c + 2 * n1 * c + n0) / a0;
  out.b1 = (2 * (n0 - n2 * c * c)) / a0;
  out.b2 = (n2 * c * c - 2 * n1 * c + n0) / a0;
  out.a1 = (2 * (1 - c * c)) / a0;
  out.a2 = (c * c - 2 * damping * c + 1) / a0;
}
