import type { FeedbackWeights } from '../../shared/axis/loop/feedback.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { closedLoop } from '../analysis/closedLoop.ts';
import { PositionController } from '../analysis/positionController.ts';
import { eigenvalues } from '../math/eigenvalues.ts';
import type { LoopFamily } from './loopFamily.ts';
import type { PlantResponse } from './plantResponse.ts';

/**
 * How close to instability a loop may come: |S|, or phase margin (rad) and gain margin (factor).
 */
export type LoopLimit =
  | { readonly kind: 'peak sensitivity'; readonly limit: number }
  | { readonly kind: 'margins'; readonly phase: number; readonly gain: number };

/** Above 1 where the loop is closer to instability than the limit allows. */
export function tightness(family: LoopFamily, weights: FeedbackWeights, limit: LoopLimit): number {
  if (limit.kind === 'peak sensitivity') return family.peakSensitivity(weights) / limit.limit;
  const { phase, gain } = family.margins(weights);
  return Math.max(limit.phase / phase, Math.log(limit.gain) / Math.log(gain));
}

/**
 * The peak sensitivity that corresponds to a limit. A phase margin φ implies at least 1/(2 sin
 * φ/2). Source: Åström, Murray, Feedback Systems, 2nd ed. 2021, ch. 10.
 */
export function sensitivityOf(limit: LoopLimit): number {
  return limit.kind === 'peak sensitivity' ? limit.limit : 1 / (2 * Math.sin(limit.phase / 2));
}

/** True when every closed-loop eigenvalue lies inside the unit circle, standing and sliding. */
export function isStable(p: Parameters, plant: PlantResponse): boolean {
  const controller = new PositionController(p);
  return [plant.standing, plant.sliding].every(({ axis }) => {
    return eigenvalues(closedLoop(axis, controller))
      .magnitudes()
      .every((size) => size < 1);
  });
}

/**
 * Step of the search over the crossover, and number of bisections of its logarithm once it is
 * bracketed.
 */
const STEP = 1.15;
const HALVINGS = 14;

/**
 * The highest crossover in a range, rad/s, at which the loop is within its limit and `accepted`;
 * null when there is none. With rising crossover the loop may leave the limit and come back, also
 * as an unstable one: each stretch within the limit is tried from its top, the highest first.
 *
 * @param isEnough false below some crossover, where nothing is looked for
 */
export function highestCrossover(
  [from, to]: readonly [number, number],
  isEnough: (crossover: number) => boolean,
  isWithin: (crossover: number) => boolean,
  accepted: (crossover: number) => boolean,
): number | null {
  let start = from;
  while (start < to && !isEnough(start * STEP)) start *= STEP;
  const steps: number[] = [];
  for (let crossover = start; crossover < to; crossover *= STEP) steps.push(crossover);
  // From above: what lies below a loop that is accepted need not be worked out. A stretch that goes on beyond the range has no top.
  let above: number | null = null;
  for (const crossover of steps.reverse()) {
    if (!isWithin(crossover)) above = crossover;
    else if (above !== null) {
      const top = topBetween(above / STEP, above, isWithin);
      if (accepted(top)) return top;
      above = null;
    }
  }
  return null;
}

/** The top of a stretch within the limit, which lies between its two ends. */
function topBetween(within: number, beyond: number, isWithin: (crossover: number) => boolean): number {
  let [low, high] = [within, beyond];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = Math.sqrt(low * high);
    if (isWithin(middle)) low = middle;
    else high = middle;
  }
  return low;
}
