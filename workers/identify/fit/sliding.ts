import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { largestMagnitude, sumOfSquares } from '../../math/statistics.ts';
import { noiseOf, Windows } from './windows.ts';

/**
 * Above this multiple of the Stribeck speed breakaway has given way to sliding: exp(−4²) of it is
 * left.
 */
const CLEAR_OF_STRIBECK = 4;
/**
 * And above this share of the top speed, because the Stribeck speed of the parameters is a guess.
 */
const SHARE_OF_TOP = 0.02;

/**
 * Half a window, s: short enough for the jerk of a move, long enough for the noise of an encoder.
 */
const SHORTEST = 0.01;
const LONGEST = 0.08;
const FEWEST_SAMPLES = 10;

/**
 * Largest share of noise in the mean square of the acceleration: noise in a cause lowers the mass
 * by its share.
 */
const MAX_NOISE = 1e-4;

/**
 * Windows over a record of positions, and in which of them the table slides in one direction
 * throughout.
 */
export interface Sliding {
  readonly windows: Windows;
  readonly speed: Float64Array;
  /** 1 or −1 where the window slides, 0 elsewhere. */
  readonly direction: Int8Array;
  readonly used: number;
  /**
   * Share of the mean square over the sliding windows that is noise: of the acceleration, and of
   * its second derivative.
   */
  readonly accelerationNoise: number;
  readonly snapNoise: number;
}

/**
 * The shortest windows for which noise does not matter. Where they would become so long that too
 * few slide, the last ones with enough.
 */
export function slidingWindows(
  position: Float64Array,
  period: number,
  p: Parameters,
  enough: number,
): Sliding {
  const noise = noiseOf(position);
  const shortest = Math.max(SHORTEST, FEWEST_SAMPLES * period);
  let best = slidingAt(position, period, p, shortest, noise);
  for (let half = 2 * shortest; half <= LONGEST && best.accelerationNoise > MAX_NOISE; half *= 2) {
    const next = slidingAt(position, period, p, half, noise);
    if (next.used < enough) break;
    best = next;
  }
  return best;
}

function slidingAt(
  position: Float64Array,
  period: number,
  p: Parameters,
  half: number,
  noise: number,
): Sliding {
  const windows = new Windows(period, position.length, half);
  const speed = windows.average(position, 1);
  const top = largestMagnitude(speed);
  const min = Math.max(CLEAR_OF_STRIBECK * p.stribeckSpeed, SHARE_OF_TOP * top);
  // A window extends over the centres of the two before and the two after it.
  const direction = new Int8Array(windows.count);
  for (let k = 2; k < windows.count - 2; k++) {
    const near = speed.subarray(k - 2, k + 3);
    if (near.every((v) => v > min)) direction[k] = 1;
    else if (near.every((v) => v < -min)) direction[k] = -1;
  }
  const noiseShare = (order: number) => {
    const column = windows.average(position, order).filter((_, k) => direction[k] !== 0);
    const square = sumOfSquares(column) / column.length;
    return (noise * windows.noiseGain(order)) ** 2 / square;
  };
  return {
    windows,
    speed,
    direction,
    used: direction.reduce((sum, d) => sum + Math.abs(d), 0),
    accelerationNoise: noiseShare(2),
    snapNoise: noiseShare(4),
  };
}
