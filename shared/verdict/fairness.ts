import { inUnit, ranged } from '../format.ts';
import { continuousForce } from '../motor.ts';
import { classOf } from '../sizing/driveClass.ts';
import type { Job } from '../study/job.ts';
import type { JudgedLane } from '../study/verdict.ts';

/** Why the comparison is a fair one, and what about it is not. */
export function fairnessSentence({ values }: Job, lanes: readonly JudgedLane[]): string {
  const forces = lanes.map(({ scene }) => continuousForce(scene.parameters));
  const peaks = lanes.map(({ outcome }) => outcome.peakSensitivity);
  const same =
    `Every drive does the same job with the same payload, ${ranged(values.payload, 'kg')}, and is tuned to the same peak sensitivity, ` +
    `${inUnit(values.peakSensitivity, '')} (as tuned: ${span(peaks, (peak) => inUnit(peak, ''))}).`;
  const range = span(forces, (force) => ranged(force, 'N'));
  return classOf(forces).odd.length === 0
    ? `${same} All are of one class: continuous force ${range}.`
    : `${same} They are not of one class: continuous force ${range}; the stronger ones stay cooler for it.`;
}

function span(values: readonly number[], text: (value: number) => string): string {
  const [least, most] = [text(Math.min(...values)), text(Math.max(...values))];
  return least === most ? least : `${least} to ${most}`;
}
