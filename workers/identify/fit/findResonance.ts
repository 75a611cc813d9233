import { type Lines, smoothed } from './lines.ts';

/** Lines count as swept where their force is above this share of the strongest, and at least so coherent with the motion. */
const SWEPT = 0.02;
const COHERENT = 0.8;
/** By what factor the response rises above that of the stiff axis at a resonance. */
const RISES = 2;

export interface FoundResonance {
  readonly at: number;
  /** Where the sweep begins and ends. All in Hz. */
  readonly low: number;
  readonly high: number;
}

/** The frequency where force moves the axis most against the same mass without a link; in words why there is none. */
export function findResonance(lines: Lines, mass: number): FoundResonance | string {
  const { frequency, causeRe, causeIm, effectRe, effectIm } = lines;
  const power = (re: Float64Array, im: Float64Array) => smoothed(re.map((r, k) => r * r + im[k]! * im[k]!));
  const force = power(causeRe, causeIm);
  const motion = power(effectRe, effectIm);
  const crossRe = smoothed(causeRe.map((r, k) => r * effectRe[k]! + causeIm[k]! * effectIm[k]!));
  const crossIm = smoothed(causeRe.map((r, k) => r * effectIm[k]! - causeIm[k]! * effectRe[k]!));
  const cross = crossRe.map((r, k) => Math.hypot(r, crossIm[k]!));
  const strongest = force.reduce((max, value) => Math.max(max, value), 0);

  let [low, high, at, highest] = [Number.POSITIVE_INFINITY, 0, 0, 0];
  for (let k = 1; k < frequency.length; k++) {
    const isSwept = force[k]! > SWEPT ** 2 * strongest && cross[k]! ** 2 > COHERENT * force[k]! * motion[k]!;
    if (!isSwept) continue;
    low = Math.min(low, frequency[k]!);
    high = frequency[k]!;
    const rise = (mass * (2 * Math.PI * high) ** 2 * cross[k]!) / force[k]!;
    if (rise > highest) {
      highest = rise;
      at = high;
    }
  }
  if (high === 0) return 'Force and motion hang together at no frequency, so the link does not show.';
  if (highest < RISES || at > 0.9 * high) {
    return `No resonance between ${low.toFixed(0)} and ${high.toFixed(0)} Hz, where the trace is excited: sweep higher, or with more force.`;
  }
  return { at, low, high };
}
