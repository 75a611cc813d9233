/** Fewer would leave a core of a small computer idle while somebody waits; the running axis needs a tenth of one. */
const MIN_WORKERS = 2;

/** How many workers share a piece of work. Of many cores one stays with the page and its running axis. */
export function workerCount(max: number): number {
  return Math.min(Math.max(navigator.hardwareConcurrency - 1, MIN_WORKERS), max);
}
