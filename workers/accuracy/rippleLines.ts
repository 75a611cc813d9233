import type { Line, Spectrum } from '../math/spectrum.ts';

/** Fewer cycles than this over the record are not told from a drift. */
export const MIN_CYCLES = 3;
/** Two lines closer than this many cycles are one, and so are a line and the foot of its window. */
const MIN_APART = 3;
/** A line stands so many times above the middle of the octave round it. */
const ABOVE_NOISE = 6;
/** Lines that are named at most, and the least of them as a share of the strongest. */
const MAX_LINES = 6;
const MIN_SHARE = 0.05;

/** The lines that stand out of a spectrum, strongest first. */
export function strongestLines(spectrum: Spectrum): Line[] {
  const { amplitude, spacing } = spectrum;
  const tops: number[] = [];
  for (let k = Math.ceil(MIN_CYCLES / spacing); k < amplitude.length - 1; k++)
    if (amplitude[k]! > amplitude[k - 1]! && amplitude[k]! >= amplitude[k + 1]!) tops.push(k);
  tops.sort((a, b) => amplitude[b]! - amplitude[a]!);
  const lines: Line[] = [];
  for (const k of tops) {
    const strongest = amplitude[tops[0]!]!;
    if (lines.length === MAX_LINES || !(amplitude[k]! > MIN_SHARE * strongest)) break;
    const line = spectrum.top(k);
    const isNew = lines.every(({ cycles }) => Math.abs(cycles - line.cycles) >= MIN_APART);
    if (isNew && amplitude[k]! > ABOVE_NOISE * middleAround(amplitude, k)) lines.push(line);
  }
  return lines;
}

/** Median over the octave about a place. */
function middleAround(amplitude: Float64Array, k: number): number {
  const octave = amplitude.slice(Math.floor(k / Math.SQRT2), Math.ceil(k * Math.SQRT2)).sort();
  return octave[octave.length >> 1]!;
}
