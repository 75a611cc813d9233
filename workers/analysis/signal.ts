/** A signal of a linear system: its weights on the states and inputs that it depends on. */
export type Signal = Float64Array;

/** Sum of signals, each with a factor. */
export function combine(...terms: readonly (readonly [factor: number, signal: Signal])[]): Signal {
  const result = new Float64Array(terms[0]![1].length);
  for (const [factor, signal] of terms)
    for (let k = 0; k < result.length; k++) result[k]! += factor * signal[k]!;
  return result;
}

/** The state or input `index` itself, among `width`. */
export function single(index: number, width: number): Signal {
  const result = new Float64Array(width);
  result[index] = 1;
  return result;
}

/** A signal over the first few of `width` states and inputs. */
export function widened(signal: ArrayLike<number>, width: number): Signal {
  const result = new Float64Array(width);
  result.set(signal);
  return result;
}
