import type { Trip } from '../../shared/protocol/axis.ts';

/**
 * The trip of an axis that will not step, or of a course that ended.
 *
 * @throws Error when it has not tripped
 */
export function tripOf({ trip }: { readonly trip: Trip | null }): Trip {
  if (trip === null) throw new Error('Nothing has tripped.');
  return trip;
}
