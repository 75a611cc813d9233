import type { Scene } from '../../shared/scene.ts';
import type { IncrementTest } from '../../shared/study/accuracy.ts';
import { roundNumber, roundUpIndex } from './roundNumbers.ts';
import { standing } from './standing.ts';
import type { TestAxis } from './testAxis.ts';

/** Steps of one size: so many up, and as many down. */
const EACH_WAY = 5;
/** Time for a step, s, and the part of it at the end in which the tool is looked at. */
const STEP_TIME = 0.4;
const LOOK = 0.05;

/** The first size as a multiple of the window, and the most sizes that are tried: four decades. */
const FIRST = 10;
const MOST_SIZES = 13;

/** How far the mean may be off the step that was asked for, as a share of it. */
const MEAN_WITHIN = 0.5;
/** Standard deviations by which the mean must stand above zero. */
const CLEAR = 2;

/**
 * Smallest step that the tool takes for certain, by sizes that fall from ten windows in the row 10, 5, 2, 1. Of each size five steps go
 * up and five down, the turn included, and the tool has 0.4 s for each. A size is made when
 *
 *   |mean − step| ≤ step/2   and   mean > 2 s
 *
 * with mean and standard deviation s (n − 1) of the ten single steps, each counted in the direction it was commanded. The sizes end with
 * the first that is not made. So lost motion, friction and noise count as they meet a single small correction. Common practice, no source.
 */
export function increment(scene: Scene): IncrementTest {
  const { axis, at } = standing(scene);

  const first = roundUpIndex(FIRST * scene.parameters.window);
  const tried: IncrementTest['tried'][number][] = [];
  let smallest: number | null = null;
  for (let k = first; k > first - MOST_SIZES; k--) {
    const step = roundNumber(k);
    const steps = stepsTaken(axis, at, step);
    const mean = steps.reduce((sum, value) => sum + value, 0) / steps.length;
    const spread = Math.sqrt(steps.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (steps.length - 1));
    const made = Math.abs(mean - step) <= MEAN_WITHIN * step && mean > CLEAR * spread;
    tried.push({ step, mean, spread, made });
    if (!made) break;
    smallest = step;
  }
  return { smallest, tried };
}

/** What the tool moved at each step, in the direction it was commanded. */
function stepsTaken(axis: TestAxis, at: number, step: number): number[] {
  const steps: number[] = [];
  let before = axis.meanTool(LOOK);
  for (let k = 1; k <= 2 * EACH_WAY; k++) {
    const isUp = k <= EACH_WAY;
    axis.goTo(at + step * Math.min(k, 2 * EACH_WAY - k));
    axis.stand(STEP_TIME - LOOK);
    const now = axis.meanTool(LOOK);
    steps.push(isUp ? now - before : before - now);
    before = now;
  }
  return steps;
}
