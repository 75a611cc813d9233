import { at } from '../../shared/core/at.ts';
import { type Complex, magnitude, over, phase } from '../math/complex.ts';
import type { ComplexArray } from '../math/complexArray.ts';

/**
 * A change of the response between neighbours that calls for a point in between: rad, or the
 * logarithm of a ratio.
 */
const TURN = 0.25;
/** Smallest distance of neighbours, relative: what changes within less is an undamped resonance. */
const CLOSEST = 1e-6;
/** Largest number of points that refinement adds, as a multiple of those given. */
const MAX_ADDED = 2;

/**
 * Angular frequencies of the oscillating modes of a sampled system, rad/s: where its response may
 * change fast.
 */
export function modes(eigenvalues: ComplexArray, period: number): number[] {
  return eigenvalues.toList().map((each) => phase(each) / period);
}

/** Points in ascending order, and the values there. */
interface Evaluated<R> {
  readonly omega: number[];
  readonly values: R[];
}

/**
 * The points between `from` and `to` in ascending order, and more of them where one of the
 * responses changes fast, so that no resonance and no dip is missed; with the values there.
 */
export function refined<R>(
  points: readonly number[],
  from: number,
  to: number,
  evaluate: (omega: number) => R,
  responses: (value: R) => readonly Complex[],
): Evaluated<R> {
  const inside = points.filter((point) => point >= from && point <= to).sort((a, b) => a - b);
  const result: Evaluated<R> = { omega: [], values: [] };
  let budget = MAX_ADDED * inside.length;
  let last: { readonly omega: number; readonly value: R } | null = null;
  const fill = (omega: number, value: R): void => {
    if (
      last !== null &&
      budget > 0 &&
      omega - last.omega > 2 * CLOSEST * omega &&
      turns(responses(last.value), responses(value))
    ) {
      budget--;
      const between = Math.sqrt(last.omega * omega);
      fill(between, evaluate(between));
      fill(omega, value);
      return;
    }
    result.omega.push(omega);
    result.values.push(value);
    last = { omega, value };
  };
  for (const omega of inside) {
    const reached = result.omega.at(-1);
    if (reached === undefined || omega - reached > CLOSEST * omega) fill(omega, evaluate(omega));
  }
  return result;
}

function turns(before: readonly Complex[], after: readonly Complex[]): boolean {
  return before.some((response, k) => {
    const ratio = over(at(after, k), response);
    return Math.abs(phase(ratio)) > TURN || Math.abs(Math.log(magnitude(ratio))) > TURN;
  });
}
