/** A ratio of magnitudes, dB. */
export const decibels = (ratio: number): number => 20 * Math.log10(ratio);
