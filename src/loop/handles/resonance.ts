import { valueAt } from '../../../shared/core/at.ts';
import { placeOn, power } from '../../plot/interpolate.ts';
import type { LoopGain } from './shapeCrossover.ts';

/** A peak that stands out of the line of |L|. */
export interface Resonance {
  /** Hz */
  readonly frequency: number;
  /** |L| over the line that would run there without it. */
  readonly height: number;
  /** Damping ratio of a mode with this width: half of Δf/f at 1/√2 of the peak. */
  readonly damping: number;
}

/** Less than this stands out of the line by chance, 2 dB. */
const MIN_HEIGHT = 10 ** (2 / 20);
/** A damping ratio above this is a bend, or the shoulder of a notch, and no peak. */
const MAX_DAMPING = 0.25;
/** What |L| falls with about a resonance: the two integrators of a mass, with some lead. */
const SLOPE = 2;
/**
 * With 1/|1 − u²| of a mode on a line of any slope, the geometric mean at u = φ and u = 1/φ is the line itself: φ − 1/φ = 1.
 */
const GOLDEN = (1 + Math.sqrt(5)) / 2;

/**
 * The resonances of an open loop, the highest first. A peak is found on |L| f², which is level where a mass alone is driven; its height is
 * counted from the geometric mean of |L| at φ and 1/φ times its frequency, which for a mode of damping ratio D gives 1/(2D).
 */
export function resonances(loop: LoopGain): Resonance[] {
  const { frequency, magnitude } = loop;
  const level = magnitude.map((value, k) => value * valueAt(frequency, k) ** SLOPE);
  const found: Resonance[] = [];
  for (let k = 1; k + 1 < level.length; k++) {
    if (valueAt(level, k) <= valueAt(level, k - 1) || valueAt(level, k) < valueAt(level, k + 1)) continue;
    const resonance = peakAt(loop, level, k);
    if (resonance) found.push(resonance);
  }
  return found.sort((a, b) => b.height - a.height);
}

/** The resonance nearest to a frequency (Hz), not further off than half an octave. */
export function resonanceNear(all: readonly Resonance[], frequency: number): Resonance | null {
  const off = (each: Resonance) => Math.abs(Math.log2(each.frequency / frequency));
  const near = all.filter((each) => off(each) <= 0.5).sort((a, b) => off(a) - off(b));
  return near[0] ?? null;
}

function peakAt({ frequency, magnitude }: LoopGain, level: Float64Array, peak: number): Resonance | null {
  const f = valueAt(frequency, peak);
  const flank = (at: number) => power(magnitude, placeOn(frequency, at));
  const height = valueAt(magnitude, peak) / Math.sqrt(flank(f * GOLDEN) * flank(f / GOLDEN));
  const [low, high] = [edge(frequency, level, peak, -1), edge(frequency, level, peak, 1)];
  if (height < MIN_HEIGHT || low === null || high === null) return null;
  const damping = (high - low) / f / 2;
  return damping > MAX_DAMPING ? null : { frequency: f, height, damping };
}

/** Where the level falls to 1/√2 of the peak on one side; null when it rises again before, or the curve ends. */
function edge(frequency: Float64Array, level: Float64Array, peak: number, step: 1 | -1): number | null {
  const half = valueAt(level, peak) / Math.SQRT2;
  for (let k = peak + step; k >= 0 && k < level.length; k += step) {
    if (valueAt(level, k) > valueAt(level, peak)) return null;
    if (valueAt(level, k) > half) continue;
    const [a, b] = [k - step, k];
    const share = Math.log(half / valueAt(level, a)) / Math.log(valueAt(level, b) / valueAt(level, a));
    return valueAt(frequency, a) * (valueAt(frequency, b) / valueAt(frequency, a)) ** share;
  }
  return null;
}
