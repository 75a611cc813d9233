import { at, valueAt } from '../../shared/core/at.ts';

/** Indices of values in rising order. */
export function risingOrder(values: Float64Array): Uint32Array {
  return Uint32Array.from(values.keys()).sort((a, b) => valueAt(values, a) - valueAt(values, b));
}

/** The rank of each value, from 0; those that are equal share the mean of theirs. */
export function ranks(values: Float64Array): Float64Array {
  const order = risingOrder(values);
  const ranked = new Float64Array(values.length);
  for (let from = 0; from < order.length; ) {
    const value = valueAt(values, at(order, from));
    let to = from;
    while (to + 1 < order.length && valueAt(values, at(order, to + 1)) === value) to++;
    for (let k = from; k <= to; k++) ranked[at(order, k)] = (from + to) / 2;
    from = to + 1;
  }
  return ranked;
}
