import { valueAt } from '../../shared/core/at.ts';

/** A signal of a linear system: its weights on the states and inputs that it depends on. */
export type Signal = Float64Array;

type Term = readonly [factor: number, signal: Signal];

/** Weighted sum of signals of equal width. */
export function combine(first: Term, ...others: readonly Term[]): Signal {
  const result = first[1].map((weight) => first[0] * weight);
  for (const [factor, signal] of others)
    for (const [k, weight] of signal.entries()) result[k] = valueAt(result, k) + factor * weight;
  return result;
}

/** The state or input with this index, among `width` of them. */
export function single(index: number, width: number): Signal {
  const result = new Float64Array(width);
  result[index] = 1;
  return result;
}

/** A signal that depends on the first few of `width` states and inputs. */
export function widened(signal: Signal, width: number): Signal {
  const result = new Float64Array(width);
  result.set(signal);
  return result;
}
