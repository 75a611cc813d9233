/**
 * Element of a list by its index, where the index is known to lie within the list.
 *
 * @throws RangeError naming the index and the length when it does not
 */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const element = list[index];
  return element === undefined ? missing(list, index) : element;
}

/**
 * The same for a `Float64Array` in a hot loop. The engine compiles a function for the kinds of list it has met:
 * `at` meets many, and would read numbers ten times slower than this, which meets one.
 *
 * @throws RangeError naming the index and the length when the index lies outside
 */
export function valueAt(values: Float64Array, index: number): number {
  const value = values[index];
  return value === undefined ? missing(values, index) : value;
}

/** Kept apart so that the functions above are short enough to be inlined. */
function missing(list: ArrayLike<unknown>, index: number): never {
  throw new RangeError(`Index ${index} lies outside a list of ${list.length}.`);
}

/**
 * A value that is known to be there: an entry that the caller put in, a match that was tested for.
 *
 * @throws TypeError when it is not
 */
export function present<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new TypeError('A value that must be there is missing.');
  return value;
}
