import { continuousForce } from '../axis/motor.ts';
import { inUnit, ranged } from '../core/format.ts';
import { classOf } from '../sizing/driveClass.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';

/** Why the comparison is a fair one, and what about it is not. */
export function fairnessSentence({ values }: Job, candidates: readonly JudgedCandidate[]): string {
  const forces = candidates.map(({ scene }) => continuousForce(scene.parameters));
  const peaks = candidates.map(({ outcome }) => outcome.peakSensitivity);
  const same =
    `Every drive does the same job with the same payload, ${ranged(values.payload, 'kg')}, and is tuned to the same peak sensitivity, ` +
    `${inUnit(values.peakSensitivity, '')} (as tuned: ${span(peaks, (peak) => inUnit(peak, ''))}).`;
  const range = span(forces, (force) => ranged(force, 'N'));
  return classOf(forces).odd.length === 0
    ? `${same} All are in one class: continuous force ${range}.`
    : `${same} They are not in one class: continuous force ${range}; the stronger ones run cooler for it.`;
}

function span(values: readonly number[], text: (value: number) => string): string {
  const [min, max] = [text(Math.min(...values)), text(Math.max(...values))];
  return min === max ? min : `${min} to ${max}`;
}
