/**
 * Magnitude optimum: an integrating loop k/s with a small delay T is made as fast as |closed loop|
 * stays flat from zero frequency up.
 *
 *     k = 1/(2T)      with a first-order lag T: 4.3 % overshoot, 65.5° phase margin
 *
 * Flat means |1 + s(1 + Ts)/k| or |1 + s e^(Ts)/k| has no term in ω²; both give the same k. Source:
 * C. Kessler, Über die Vorausberechnung optimal abgestimmter Regelkreise, Regelungstechnik 2, 1954,
 * and 3, 1955; Umland, Safiuddin, Magnitude and symmetric optimum criterion, IEEE Trans. Industry
 * Applications 26(3), 1990 (from memory).
 *
 * @param delay sum of the small delays, s
 * @returns gain of the integrating loop, which is its crossover, rad/s
 */
export function magnitudeOptimum(delay: number): number {
  return 1 / (2 * delay);
}

/**
 * A voltage is applied one period after its sample and held for one period, which adds half a
 * period on average.
 */
export const CURRENT_PERIODS = 1.5;

/**
 * Bandwidth of the current loop, Hz, with the winding pole cancelled: an integrator with the delay
 * of the sampling remains.
 */
export function currentBandwidth(currentRate: number): number {
  return magnitudeOptimum(CURRENT_PERIODS / currentRate) / (2 * Math.PI);
}
