import { at } from '../../shared/core/at.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { StaircaseTest } from '../../shared/protocol/accuracy.ts';
import { mean, sumOfSquares } from '../math/statistics.ts';
import { roundNumber, roundUpIndex } from './roundNumbers.ts';
import { standing } from './standing.ts';
import { thinned } from './thinned.ts';

/** Steps up, then as many down, and how long the axis stands on each, s. */
const STAIRS = 5;
const STAND = 0.2;
/** Only the second half of each stand counts: the first is for settling. */
const COUNTED = 0.5;

/**
 * Step height as a share of the window, and its smallest size in encoder counts: the loop cannot
 * see smaller ones.
 */
const OF_WINDOW = 0.2;
const MIN_COUNTS = 2;

/**
 * A staircase of small steps in the middle of the travel. A step is a fifth of the window or two
 * encoder counts, whichever is larger, rounded up to 1, 2 or 5.
 */
export function staircase(scene: Scene): StaircaseTest {
  const { window, encoderResolution } = scene.parameters;
  const { axis, at: place, room } = standing(scene);
  const wanted = Math.max(OF_WINDOW * window, MIN_COUNTS * encoderResolution);
  const step = roundNumber(roundUpIndex(Math.min(wanted, room / STAIRS)));
  const ground = axis.look((1 - COUNTED) * STAND).mean;

  const set: number[] = [];
  const tool: number[] = [];
  let [largestError, squares, counted] = [0, 0, 0];
  for (let stair = 0; stair <= 2 * STAIRS; stair++) {
    const height = step * Math.min(stair, 2 * STAIRS - stair);
    const watch = () => {
      set.push(height);
      tool.push(axis.tool - ground);
    };
    axis.goTo(place + height, watch);
    axis.stand(STAND * (1 - COUNTED), watch);
    const first = tool.length;
    axis.stand(STAND * COUNTED, watch);
    const stand = tool.slice(first);
    const middle = mean(stand);
    largestError = Math.max(largestError, Math.abs(middle - height));
    squares += sumOfSquares(stand, middle);
    counted += stand.length;
  }
  const shown = thinned(tool.length);
  return {
    step,
    time: shown.map((k) => k * axis.period),
    set: shown.map((k) => at(set, k)),
    tool: shown.map((k) => at(tool, k)),
    largestError,
    noise: Math.sqrt(squares / counted),
  };
}
