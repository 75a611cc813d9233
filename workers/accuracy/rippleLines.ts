import { valueAt } from '../../shared/core/at.ts';
import type { Line, Spectrum } from '../math/spectrum.ts';
import { median } from '../math/statistics.ts';

/** Fewer cycles than this over the record cannot be told from drift. */
export const MIN_CYCLES = 3;
/**
 * Two lines closer than this many cycles count as one, and so do a line and the foot of its window.
 */
const MIN_APART = 3;
/** A line must exceed the median of the octave around it by this factor; of four octaves where it has few cycles over the record. */
const ABOVE_NOISE = 6;
const FEW_CYCLES = 12;
/** Largest number of lines, and the smallest as a share of the strongest: one whose cause is known is told where it is weak. */
const MAX_LINES = 6;
const MIN_SHARE = 0.05;
const MIN_KNOWN_SHARE = 0.002;

/** The lines that stand out in a spectrum, strongest first; `isKnown` says whether something has that many cycles over the record. */
export function strongestLines(
  spectrum: Spectrum,
  isKnown: (cycles: number) => boolean = () => false,
): Line[] {
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
    if (!strongest || lines.length === MAX_LINES || !(height > MIN_KNOWN_SHARE * strongest.height)) break;
    const line = spectrum.top(k);
    if (height < MIN_SHARE * strongest.height && !isKnown(line.cycles)) continue;
    const isNew = lines.every(({ cycles }) => Math.abs(cycles - line.cycles) >= MIN_APART);
    // Few cycles are wide in the spectrum: what is around them has to be looked for farther off.
    const octaves = line.cycles < FEW_CYCLES ? 2 : 0.5;
    if (isNew && height > ABOVE_NOISE * middleAround(amplitude, k, octaves)) lines.push(line);
  }
  return lines;
}

/** Median over so many octaves to either side of a place. */
function middleAround(amplitude: Float64Array, k: number, octaves: number): number {
  return median(amplitude.subarray(Math.floor(k / 2 ** octaves), Math.ceil(k * 2 ** octaves)));
}
