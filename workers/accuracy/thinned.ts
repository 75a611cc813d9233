/** Samples that a chart gets of a test at most. */
const MAX = 1200;

/**
 * The index of every n-th of `count` samples, the first included, so that a chart gets no more than
 * it can show.
 */
export function thinned(count: number): number[] {
  const every = Math.max(Math.ceil(count / MAX), 1);
  return Array.from({ length: Math.ceil(count / every) }, (_, k) => k * every);
}
