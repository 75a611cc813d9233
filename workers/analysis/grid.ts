import { type Complex, magnitude, over, phase } from './complex.ts';
import type { Eigenvalues } from './eigenvalues.ts';

/** A turn of the response between two neighbours that calls for a point between them: rad, or the logarithm of a ratio. */
const TURN = 0.25;
/** Closest neighbours, relative: what turns within less is a resonance without damping. */
const CLOSEST = 1e-6;
/** Points that refinement may add, as a multiple of those given. */
const MOST_ADDED = 2;

/** `count` frequencies from `from` to `to`, evenly spaced on a logarithmic scale, both ends exact. */
export function logSpaced(from: number, to: number, count: number): number[] {
  const points = Array.from({ length: count }, (_, i) => from * (to / from) ** (i / (count - 1)));
  points[count - 1] = to;
  return points;
}

/** Angular frequencies of the oscillating modes of a sampled system, rad/s: where its response may turn fast. */
export function modes({ re, im }: Eigenvalues, period: number): number[] {
  return Array.from(re, (value, k) => Math.atan2(im[k]!, value) / period).filter(
    (omega) => omega > 0 && omega < Math.PI / period,
  );
}

/**
 * The given points, ascending, and more between them where `response` turns fast, so that no resonance and no
 * dip slips through. Returns the responses too.
 */
export function refined<R>(
  points: readonly number[],
  evaluate: (omega: number) => R,
  response: (value: R) => Complex,
): { omega: number[]; values: R[] } {
  const omega: number[] = [];
  const values: R[] = [];
  let budget = MOST_ADDED * points.length;
  const turns = (a: R, b: R) => {
    const ratio = over(response(b), response(a));
    return Math.abs(phase(ratio)) > TURN || Math.abs(Math.log(magnitude(ratio))) > TURN;
  };
  const fill = (a: number, atA: R, b: number, atB: R): void => {
    if (budget > 0 && b - a > CLOSEST * b && turns(atA, atB)) {
      budget--;
      const between = Math.sqrt(a * b);
      const value = evaluate(between);
      fill(a, atA, between, value);
      fill(between, value, b, atB);
      return;
    }
    omega.push(b);
    values.push(atB);
  };
  let last = points[0]!;
  let atLast = evaluate(last);
  omega.push(last);
  values.push(atLast);
  for (const next of points.slice(1)) {
    const value = evaluate(next);
    fill(last, atLast, next, value);
    last = next;
    atLast = value;
  }
  return { omega, values };
}
