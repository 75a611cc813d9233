import type { Scene } from '../../shared/core/scene.ts';
import type { IncrementTest } from '../../shared/protocol/accuracy.ts';
import { mean, variance } from '../math/statistics.ts';
import { roundNumber, roundUpIndex } from './roundNumbers.ts';
import { standing } from './standing.ts';
import type { TestAxis } from './testAxis.ts';

/** Steps of each size: this many up, and as many down. */
const EACH_WAY = 5;
/** Time for a step, s, and the part at its end over which the tool position is averaged. */
const STEP_TIME = 0.4;
const LOOK = 0.05;
/** Rest before the first step of each size, s, so that creep after the approach has ended. */
const REST = 1;

/** First size as a multiple of the window, and the smallest that is tried, m: finer is no encoder that is sold. */
const FIRST = 10;
const FINEST = 1e-10;
/** Sizes of the series 10, 5, 2 in a decade. */
const DECADE = 3;

/** Largest deviation of the mean from the commanded step, as a share of the step. */
const MEAN_WITHIN = 0.5;
/** By this many standard deviations the mean must exceed zero. */
const CLEAR = 2;

/**
 * Minimum incremental motion at the tool. Step sizes fall from ten windows by decades until one fails, then by the series
 * 10, 5, 2 within the last decade, down to 0.1 nm. For each size five steps go up, approached from below, and five down, the reversal included;
 * the tool has 0.4 s for each. A size passes when
 *
 *   |mean − step| ≤ step/2   and   mean > 2 s
 *
 * with the mean of the ten single steps, each counted in its commanded direction, and the standard
 * deviation s of one step between two instants: s² = s_steps² + 2 σ², where s_steps is that of the
 * ten (n − 1) and σ the jitter of the standing tool. So
 * lost motion, friction and noise count as they affect a single small correction. Common practice,
 * no source.
 */
export function increment(scene: Scene): IncrementTest {
  const { axis, at, room } = standing(scene);

  const first = roundUpIndex(Math.min(FIRST * scene.parameters.window, room / EACH_WAY));
  const tried: IncrementTest['tried'][number][] = [];
  const isMade = (k: number): boolean => {
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
    return made;
  };
  const finest = roundUpIndex(FINEST);
  let smallest: number | null = null;
  let k = first;
  for (; k >= finest && isMade(k); k -= DECADE) smallest = k;
  if (smallest !== null)
    for (let fine = smallest - 1; fine > k && fine >= finest && isMade(fine); fine--) smallest = fine;
  tried.sort((a, b) => b.step - a.step);
  return { smallest: smallest === null ? null : roundNumber(smallest), tried };
}

/**
 * Motion of the tool at each step, in its commanded direction, and the rms jitter while it stood in
 * between, m.
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
