/*
 * A field that repeats every two pole pitches, as a sum of odd harmonics along the axis:
 *
 *   B_across = Σ b_n(y) cos(nkx)      B_along = Σ a_n(y) sin(nkx)      k = π/τ,  n = 1, 3, 5 …
 *
 * x along the axis from the middle of a north pole, y away from the magnets, m; B in T. A row of blocks magnetised by turns over a
 * share α of the pole pitch has the remanence harmonics B_n = 4 B_r/(nπ) sin(nπα/2), its Fourier series.
 */

/** Orders that are summed: what is left out has decayed to below 1 % of the field half a millimetre away from a magnet. */
export const ORDERS: readonly number[] = [1, 3, 5, 7, 9, 11, 13, 15];

/** One harmonic at one distance: amplitudes in T, and of the function whose level lines are the flux lines. */
interface Harmonic {
  readonly across: number;
  readonly along: number;
  /** Of the vector potential, T·m; around an axis that times the radius, T·m². Goes with sin(nkx). */
  readonly potential: number;
}

export type HarmonicsAt = (order: number, y: number) => Harmonic;

/** Remanence harmonic B_n, T. */
export function remanenceHarmonic(order: number, remanence: number, share: number): number {
  return ((4 * remanence) / (order * Math.PI)) * Math.sin((order * Math.PI * share) / 2);
}

/** Flux density across and along at one place, T. */
export function fluxDensity(field: HarmonicsAt, polePitch: number, x: number, y: number) {
  let [across, along] = [0, 0];
  for (const order of ORDERS) {
    const phase = (order * Math.PI * x) / polePitch;
    const harmonic = field(order, y);
    across += harmonic.across * Math.cos(phase);
    along += harmonic.along * Math.sin(phase);
  }
  return { across, along };
}
