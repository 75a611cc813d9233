/** Largest number of samples in a chart of a test. */
const MAX = 1200;

/**
 * Indices of every n-th of `count` samples, the first included, no more of them than a chart can
 * show.
 */
export function thinned(count: number): number[] {
  const every = Math.max(Math.ceil(count / MAX), 1);
  return Array.from({ length: Math.ceil(count / every) }, (_, k) => k * every);
}
