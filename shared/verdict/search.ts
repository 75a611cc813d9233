import type { NumberRow } from '../core/parameters/row.ts';

/** Values tried on the way to an end of the range, closer together near the start. */
const STEPS = 14;
/** A change is found to this share of the value (or of the range, where it runs through zero). */
const NEAR = 1e-3;

/** Where something first changes. */
export interface Change<T> {
  readonly at: number;
  /** What it is from there on. */
  readonly becomes: T;
  /** False: just before it nothing is known, so that the change may come earlier. */
  readonly exact: boolean;
}

/**
 * The first value on the way from `start` to an end of its row at which `of` is known to be no longer `same`, to a part in a thousand;
 * null where it never is. Where `of` is null nothing is known.
 */
export function firstChange<T extends { readonly key: string }>(
  row: NumberRow,
  start: number,
  end: number,
  same: string,
  of: (value: number) => T | null,
): Change<T> | null {
  const byRatio = start > 0 && end > 0 && row.min >= 0;
  const between = (share: number) =>
    byRatio ? start * (end / start) ** share : start + (end - start) * share;
  const seen = { inside: 0, outside: 1, exact: true, changed: null as T | null };
  const take = (share: number) => {
    const found = of(between(share));
    if (found !== null && found.key !== same) {
      seen.outside = share;
      seen.changed = found;
      return;
    }
    seen.inside = share;
    seen.exact = found !== null;
  };
  for (let k = 1; k <= STEPS && seen.changed === null; k++) take((k / STEPS) ** 2);
  if (seen.changed === null) return null;
  const isNear = () => {
    const gap = Math.abs(between(seen.outside) - between(seen.inside));
    return gap <= NEAR * (byRatio ? between(seen.inside) : Math.abs(row.max - row.min));
  };
  while (!isNear()) take((seen.inside + seen.outside) / 2);
  return { at: between(seen.outside), becomes: seen.changed, exact: seen.exact };
}
