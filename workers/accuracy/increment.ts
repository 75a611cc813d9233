import type { Scene } from '../../shared/core/scene.ts';
import type { IncrementTest } from '../../shared/protocol/accuracy.ts';
import { mean, variance } from '../math/statistics.ts';
import { roundNumber, roundUpIndex } from './roundNumbers.ts';
import { standing } from './standing.ts';
import type { TestAxis } from './testAxis.ts';

/** Steps of one size: so many up, and as many down. */
const EACH_WAY = 5;
/** Time for a step, s, and the part of it at the end in which the tool is looked at. */
const STEP_TIME = 0.4;
const LOOK = 0.05;
/** Rest before the first of a size, s: what creeps after the way there comes to an end. */
const REST = 1;

/** The first size as a multiple of the window, and the most sizes that are tried: four decades. */
const FIRST = 10;
const MAX_SIZES = 13;

/** How far the mean may be off the step that was asked for, as a share of it. */
const MEAN_WITHIN = 0.5;
/** Standard deviations by which the mean must stand above zero. */
const CLEAR = 2;

/**
 * Smallest step that the tool takes for certain, by sizes that fall from ten windows in the row 10,
 * 5, 2, 1. Of each size five steps go up from where it was approached from below, and five down,
 * the turn included. The tool has 0.4 s for each. A size is made when
 *
 *   |mean − step| ≤ step/2   and   mean > 2 s
 *
 * with the mean of the ten single steps, each counted in the direction it was commanded, and the
 * standard deviation s of one step as it is seen from one instant to another: s² = s_steps² + 2 σ²,
 * s_steps that of the ten (n − 1) and σ the tool's jitter while it stands. The sizes end with the
 * first that is not made. So lost motion, friction and noise count as they meet a single small
 * correction. Common practice, no source.
 */
export function increment(scene: Scene): IncrementTest {
  const { axis, at, room } = standing(scene);

  const first = roundUpIndex(Math.min(FIRST * scene.parameters.window, room / EACH_WAY));
  const tried: IncrementTest['tried'][number][] = [];
  let smallest: number | null = null;
  for (let k = first; k > first - MAX_SIZES; k--) {
    const step = roundNumber(k);
    axis.goTo(at - roundNumber(first));
    axis.settle();
    axis.goTo(at);
    axis.stand(REST);
    const { steps, jitter } = stepsTaken(axis, at, step);
    const taken = mean(steps);
    const spread = Math.sqrt(variance(steps) + 2 * jitter ** 2);
    const made = Math.abs(taken - step) <= MEAN_WITHIN * step && taken > CLEAR * spread;
    tried.push({ step, mean: taken, spread, made });
    if (!made) break;
    smallest = step;
  }
  return { smallest, tried };
}

/**
 * What the tool moved at each step, in the direction it was commanded, and its rms jitter while it
 * stood in between, m.
 */
function stepsTaken(axis: TestAxis, at: number, step: number): { steps: number[]; jitter: number } {
  const steps: number[] = [];
  let before = axis.look(LOOK).mean;
  let squares = 0;
  for (let k = 1; k <= 2 * EACH_WAY; k++) {
    axis.goTo(at + step * Math.min(k, 2 * EACH_WAY - k));
    axis.stand(STEP_TIME - LOOK);
    const { mean: after, jitter } = axis.look(LOOK);
    steps.push(k <= EACH_WAY ? after - before : before - after);
    squares += jitter ** 2;
    before = after;
  }
  return { steps, jitter: Math.sqrt(squares / steps.length) };
}
