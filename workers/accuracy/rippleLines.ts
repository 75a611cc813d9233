import { valueAt } from '../../shared/core/at.ts';
import type { Line, Spectrum } from '../math/spectrum.ts';
import { median } from '../math/statistics.ts';

/** Fewer cycles than this over the record cannot be told from drift. */
export const MIN_CYCLES = 3;
/**
 * Two lines closer than this many cycles count as one, and so do a line and the foot of its window.
 */
const MIN_APART = 3;
/** A line must exceed the median of the octave around it by this factor. */
const ABOVE_NOISE = 6;
/** Largest number of lines, and the smallest as a share of the strongest. */
const MAX_LINES = 6;
const MIN_SHARE = 0.05;

/** The lines that stand out in a spectrum, strongest first. */
export function strongestLines(spectrum: Spectrum): Line[] {
  const { amplitude, spacing } = spectrum;
  const tops: { readonly k: number; readonly height: number }[] = [];
  for (let k = Math.ceil(MIN_CYCLES / spacing); k < amplitude.length - 1; k++) {
    const height = valueAt(amplitude, k);
    if (height > valueAt(amplitude, k - 1) && height >= valueAt(amplitude, k + 1)) tops.push({ k, height });
  }
  tops.sort((a, b) => b.height - a.height);
  const [strongest] = tops;
  const lines: Line[] = [];
  for (const { k, height } of tops) {
    if (!strongest || lines.length === MAX_LINES || !(height > MIN_SHARE * strongest.height)) break;
    const line = spectrum.top(k);
    const isNew = lines.every(({ cycles }) => Math.abs(cycles - line.cycles) >= MIN_APART);
    if (isNew && height > ABOVE_NOISE * middleAround(amplitude, k)) lines.push(line);
  }
  return lines;
}

/** Median over the octave around a place. */
function middleAround(amplitude: Float64Array, k: number): number {
  return median(amplitude.subarray(Math.floor(k / Math.SQRT2), Math.ceil(k * Math.SQRT2)));
}
