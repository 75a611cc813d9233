import { valueAt } from '../../../shared/core/at.ts';
import type { ComplexArray } from '../../math/complexArray.ts';
import { type Lines, smoothed } from './lines.ts';

/**
 * Lines count as swept where their force exceeds this share of the strongest, and its coherence
 * with the motion exceeds this.
 */
const SWEPT = 0.02;
const COHERENT = 0.8;
/** Factor by which the response at a resonance must exceed that of the rigid axis. */
const RISES = 2;

interface FoundResonance {
  readonly at: number;
  /** Where the sweep begins and ends. All in Hz. */
  readonly low: number;
  readonly high: number;
}

/**
 * The frequency where the force moves the axis most, relative to the same mass without a link; or a
 * text that says why there is none.
 */
export function findResonance({ frequency, cause, effect }: Lines, mass: number): FoundResonance | string {
  const force = power(cause);
  const motion = power(effect);
  const cross = crossPower(cause, effect);
  const strongest = force.reduce((max, value) => Math.max(max, value), 0);

  let [low, high, at, highest] = [Number.POSITIVE_INFINITY, 0, 0, 0];
  for (const [k, f] of frequency.entries()) {
    const strength = valueAt(force, k);
    const common = valueAt(cross, k);
    const isSwept =
      strength > SWEPT ** 2 * strongest && common ** 2 > COHERENT * strength * valueAt(motion, k);
    if (k === 0 || !isSwept) continue;
    low = Math.min(low, f);
    high = f;
    const rise = (mass * (2 * Math.PI * f) ** 2 * common) / strength;
    if (rise > highest) {
      highest = rise;
      at = f;
    }
  }
  if (high === 0) return 'Force and motion are coherent at no frequency, so the link cannot be identified.';
  if (highest < RISES || at > 0.9 * high) {
    return `No resonance between ${low.toFixed(0)} and ${high.toFixed(0)} Hz, where the trace is excited: sweep higher, or with more force.`;
  }
  return { at, low, high };
}

/** |X|², averaged over neighbours. */
function power({ re, im }: ComplexArray): Float64Array {
  return smoothed(re.map((r, k) => r ** 2 + valueAt(im, k) ** 2));
}

/** |X conj Y|, averaged over neighbours before the magnitude is taken. */
function crossPower(x: ComplexArray, y: ComplexArray): Float64Array {
  const re = x.re.map((r, k) => r * valueAt(y.re, k) + valueAt(x.im, k) * valueAt(y.im, k));
  const im = x.re.map((r, k) => r * valueAt(y.im, k) - valueAt(x.im, k) * valueAt(y.re, k));
  const smoothIm = smoothed(im);
  return smoothed(re).map((r, k) => Math.hypot(r, valueAt(smoothIm, k)));
}
