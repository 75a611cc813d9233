/** What a page holds after collection, at the same place of every round. */
export interface Holding {
  /** Of the page and of its simulation, bytes. */
  readonly pageHeap: number;
  readonly workerHeap: number;
  readonly nodes: number;
  readonly listeners: number;
  readonly workers: number;
}

/**
 * By how much each may differ between two looks at the same state: heaps by caches and compiled code, nodes by ticks of charts and what
 * the figures say, listeners by those of what is about to be collected.
 */
const TOLERANCES: Readonly<Record<keyof Holding, number>> = {
  pageHeap: 0.05,
  workerHeap: 0.05,
  nodes: 0.01,
  listeners: 0.005,
  workers: 0,
};

/**
 * What grew, in words. The first quarter fills caches and loads parts; what leaks rises from then on, so even its lowest value of the last
 * quarter is above the highest of the second.
 */
export function whatGrew(holdings: readonly Holding[]): string[] {
  const quarter = Math.floor(holdings.length / 4);
  if (quarter === 0) throw new RangeError(`${holdings.length} rounds are too few: 4 or more are needed.`);
  const names = Object.keys(TOLERANCES) as (keyof Holding)[];
  return names.flatMap((name) => {
    const values = holdings.map((each) => each[name]);
    const before = Math.max(...values.slice(quarter, 2 * quarter));
    const after = Math.min(...values.slice(-quarter));
    if (after <= before * (1 + TOLERANCES[name])) return [];
    return [`${name} grew from ${before} to ${after} within ${holdings.length} rounds`];
  });
}
