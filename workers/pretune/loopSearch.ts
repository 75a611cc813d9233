import { at } from '../../shared/core/at.ts';
import { NormalNoise } from '../control/noise.ts';
import type { LoopDesign, LoopDesigner } from './loopDesign.ts';
import { type LoopLimit, sensitivityOf } from './loopLimit.ts';
import { type Coordinate, coordinates, type Structure, shapeOf } from './structure.ts';

/** Steps as shares of a coordinate's range (logarithmic), at the beginning and at the end. */
const FIRST_STEP = 0.3;
const LAST_STEP = 0.02;
/** A search that starts from the result for the previous limit needs less. */
const FOLLOWING_STEP = 0.1;
const FOLLOWING_SHARE = 0.5;
/** A structure with fewer coordinates needs less too. */
const MANY_COORDINATES = 6;
const SEED = 1;

/**
 * For each limit the loop with the largest integral gain, which is the one that rejects
 * disturbances fastest. Source of the criterion: Åström, Panagopoulos, Hägglund, Design of PI
 * controllers based on non-convex optimization, Automatica 34(5), 1998 (from memory).
 *
 * The peaks that bind form ridges, along which steps in single coordinates lead nowhere: so the
 * search takes random steps, from a seed, in all coordinates around the best so far, and smaller
 * and smaller ones.
 *
 * @param trials for the first limit, where there are many coordinates
 * @returns null where no loop of this structure is within the limit
 */
export function searchLoops(
  designer: LoopDesigner,
  structure: Structure,
  limits: readonly LoopLimit[],
  trials: number,
): (LoopDesign | null)[] {
  const noise = new NormalNoise(SEED);
  const axes = coordinates(structure, designer.rate);
  let place = axes.map(({ start }) => start);
  const most = trials * Math.min(axes.length / MANY_COORDINATES, 1);
  let following = false;
  const found = new Map<LoopLimit, LoopDesign>();
  for (const limit of [...limits].sort((a, b) => sensitivityOf(a) - sensitivityOf(b))) {
    const firstStep = following ? FOLLOWING_STEP : FIRST_STEP;
    const count = Math.ceil(following ? FOLLOWING_SHARE * most : most);
    let best = designer.fastest(shapeOf(structure, place), limit);
    for (let k = 0; k < count; k++) {
      const step = firstStep * (LAST_STEP / firstStep) ** (k / count);
      const values = place.map((value, i) => moved(value, at(axes, i), step * noise.next()));
      const max = best?.rejection ?? 0;
      const design = designer.fastest(shapeOf(structure, values), limit, (rejection) => rejection > max);
      if (design === null) continue;
      best = design;
      place = values;
    }
    if (best === null) continue;
    found.set(limit, best);
    following = true;
  }
  return limits.map((limit) => found.get(limit) ?? null);
}

function moved(value: number, { min, max }: Coordinate, share: number): number {
  return Math.min(Math.max(value * (max / min) ** share, min), max);
}
