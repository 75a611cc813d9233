import { at } from '../core/at.ts';
import { inUnit, ranged } from '../core/format.ts';
import type { Presets } from '../core/scene.ts';
import { type CandidateChoice, candidateLetter } from '../study/candidate.ts';
import { classForce, classOf } from './driveClass.ts';

/** In words, how equal the drives are that are compared: one class of continuous force, or which of them stands out. */
export function classNote(candidates: readonly CandidateChoice[], presets: Presets): string {
  const forces = candidates.map((candidate) => classForce(candidate, presets));
  if (forces.length < 2) return '';
  const { middle, odd } = classOf(forces);
  const alike = [...forces.keys()].filter((k) => !odd.includes(k));
  const job = 'Payload and job are the same for all.';
  if (odd.length === 0) {
    const spread = Math.max(...forces) / Math.min(...forces) - 1;
    const text = spread < 0.005 ? 'the same' : `the same within ${inUnit(spread, '%', 2)}`;
    return `Comparable drives: their continuous force is ${text}, ${ranged(middle, 'N')}. ${job}`;
  }
  const letters = alike.map(candidateLetter).join(', ');
  const others = odd
    .map(
      (k) =>
        `${candidateLetter(k)} has ${ranged(at(forces, k), 'N')}, ${times(at(forces, k) / middle)} as much`,
    )
    .join('; ');
  return `Not all in one class: ${letters} ${alike.length > 1 ? 'have' : 'has'} a continuous force of ${span(alike.map((k) => at(forces, k)))}; ${others}. ${job}`;
}

function span(forces: readonly number[]): string {
  const [min, max] = [ranged(Math.min(...forces), 'N'), ranged(Math.max(...forces), 'N')];
  return min === max ? min : `${min} to ${max}`;
}

function times(factor: number): string {
  return factor === 2 ? 'twice' : `${inUnit(factor, '', 2)} times`;
}
