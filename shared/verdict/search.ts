import type { NumberRow } from '../parameters/row.ts';

/** Values tried on the way to an end of the range, closer together near the start. */
const STEPS = 14;
/** A change is found to this share of the value (or of the range, where it runs through zero). */
const NEAR = 1e-3;

/** Where something first changes. */
export interface Change<T> {
  readonly at: number;
  /** What it is from there on. */
  readonly becomes: T;
}

/**
 * The first value on the way from `start` to an end of its row at which `of` is no longer `same`, to a part in a thousand; null where it
 * stays the same all the way, or becomes unknown (null) before it changes.
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
  let [inside, outside] = [0, 1];
  let changed: T | null = null;
  for (let k = 1; k <= STEPS && changed === null; k++) {
    const share = (k / STEPS) ** 2;
    const found = of(between(share));
    if (found === null) return null;
    if (found.key === same) inside = share;
    else [outside, changed] = [share, found];
  }
  if (changed === null) return null;
  const isNear = () => {
    const gap = Math.abs(between(outside) - between(inside));
    return gap <= NEAR * (byRatio ? between(inside) : Math.abs(row.max - row.min));
  };
  while (!isNear()) {
    const middle = (inside + outside) / 2;
    const found = of(between(middle));
    if (found === null) return null;
    if (found.key === same) inside = middle;
    else [outside, changed] = [middle, found];
  }
  return { at: between(outside), becomes: changed };
}
