import { inUnit } from '../../../shared/core/format.ts';

/** How far the search for what would change the choice is. */
export function flipProgress(share: number): string {
  return `searching for what would change the choice, ${inUnit(share, '%', 2)}`;
}
