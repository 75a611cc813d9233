/**
 * A value that the test needs.
 *
 * @throws Error when it is null or undefined
 */
export function present<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error(`The value is ${value}.`);
  return value;
}
