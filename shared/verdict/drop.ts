import { ranged } from '../core/format.ts';
import { BRAKE_TIME } from '../sizing/holdingFigures.ts';
import { sizingValue } from '../sizing/sizing.ts';
import type { JudgedCandidate } from './judgement.ts';
import { listed } from './text.ts';

/** How far each drive lets the axis drop at a trip, in a sentence; empty for an axis that gravity does not pull at. */
export function dropSentence(candidates: readonly Pick<JudgedCandidate, 'letter' | 'sizing'>[]): string {
  const drops = candidates.flatMap(({ letter, sizing }) => {
    const value = sizingValue(sizing, 'drop');
    return value === null ? [] : [`with ${letter} by ${ranged(value, 'm', 2)}`];
  });
  if (drops.length === 0) return '';
  return `When the drive trips at standstill, the axis drops until its brake holds ${ranged(BRAKE_TIME, 's', 2)} later: ${listed(drops)}.`;
}
