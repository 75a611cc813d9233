import { type Complex, magnitude, over, phase } from '../math/complex.ts';
import type { ComplexArray } from '../math/complexArray.ts';

/** A turn of the response between two neighbours that calls for a point between them: rad, or the logarithm of a ratio. */
const TURN = 0.25;
/** Closest neighbours, relative: what turns within less is a resonance without damping. */
const CLOSEST = 1e-6;
/** Points that refinement may add, as a multiple of those given. */
const MAX_ADDED = 2;

/** `count` frequencies from `from` to `to`, evenly spaced on a logarithmic scale, both ends exact. */
export function logSpaced(from: number, to: number, count: number): number[] {
  const points = Array.from({ length: count }, (_, i) => from * (to / from) ** (i / (count - 1)));
  points[count - 1] = to;
  return points;
}

/** Angular frequencies of the oscillating modes of a sampled system, rad/s: where its response may turn fast. */
export function modes({ re, im }: ComplexArray, period: number): number[] {
  return Array.from(re, (value, k) => Math.atan2(im[k]!, value) / period);
}

/**
 * The points between `from` and `to`, ascending, and more between them where one of the responses turns fast, so that no resonance and no dip
 * slips through. Returns what was evaluated too.
 */
export function refined<R>(
  points: readonly number[],
  from: number,
  to: number,
  evaluate: (omega: number) => R,
  responses: (value: R) => readonly Complex[],
): { omega: number[]; values: R[] } {
  const sorted = points.filter((point) => point >= from && point <= to).sort((a, b) => a - b);
  const omega = [sorted[0]!];
  const values = [evaluate(sorted[0]!)];
  let budget = MAX_ADDED * sorted.length;
  const fill = (b: number, atB: R): void => {
    const a = omega[omega.length - 1]!;
    if (budget > 0 && b - a > 2 * CLOSEST * b && turns(values[values.length - 1]!, atB, responses)) {
      budget--;
      const between = Math.sqrt(a * b);
      fill(between, evaluate(between));
      fill(b, atB);
      return;
    }
    omega.push(b);
    values.push(atB);
  };
  for (const next of sorted.slice(1)) {
    if (next - omega[omega.length - 1]! > CLOSEST * next) fill(next, evaluate(next));
  }
  return { omega, values };
}

function turns<R>(a: R, b: R, responses: (value: R) => readonly Complex[]): boolean {
  const atB = responses(b);
  return responses(a).some((before, k) => {
    const ratio = over(atB[k]!, before);
    return Math.abs(phase(ratio)) > TURN || Math.abs(Math.log(magnitude(ratio))) > TURN;
  });
}
