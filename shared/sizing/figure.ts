import { readAlike, toldApart } from '../core/format.ts';
import type { Unit } from '../core/units.ts';
import type { SizingFigure, Standing } from './sizing.ts';

/** Beyond this share of a limit a figure is close to it. Common practice, no source. */
export const CLOSE = 0.85;

type Limit = NonNullable<SizingFigure['limit']>;

/** A figure, and what to say when it is beyond its limit. */
export interface Figured extends SizingFigure {
  readonly reason: string;
}

/** A figure that is looked at and has no limit. */
export function plain(parts: Omit<SizingFigure, 'limit' | 'standing'>): Figured {
  return { ...parts, limit: null, standing: 'plain', reason: '' };
}

/** A figure with a limit, which it keeps when it reads as the limit does; `used` is the share of the limit that it takes, where that is not value over limit or limit over value. */
export function limited(
  parts: Omit<SizingFigure, 'limit' | 'standing'>,
  limit: Limit,
  reason: string,
  used = limit.side === 'max' ? parts.value / limit.value : limit.value / parts.value,
): Figured {
  const reached = !(used <= 1) && readAlike(parts.value, limit.value, parts.unit) ? 1 : used;
  return { ...parts, limit, standing: standingOf(reached), reason };
}

/** Why a figure is beyond its limit, in words around the two: told with as many digits as tell them apart. */
export function beyondText(
  value: number,
  limit: number,
  unit: Unit,
  words: (value: string, limit: string) => string,
): string {
  return words(...toldApart(value, limit, unit));
}

function standingOf(used: number): Standing {
  if (!(used <= 1)) return 'beyond';
  return used > CLOSE ? 'close' : 'good';
}
