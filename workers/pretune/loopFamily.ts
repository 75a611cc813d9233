import type { FeedbackWeights } from '../../shared/axis/loop/feedback.ts';
import { at, valueAt } from '../../shared/core/at.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { PositionController } from '../analysis/positionController.ts';
import { ComplexArray } from '../math/complexArray.ts';
import type { PlantResponse, PlantState } from './plantResponse.ts';

/**
 * The loop of one axis as a function of the weights of its feedback, all else fixed. What the controller is made of is worked out once over
 * the frequencies, so that a set of gains costs one pass over them:
 *
 *   L = P_x C_x (a + b J) + P_s C_s (c + d J + inertia)
 *
 * P_x and P_s are the responses of the two readings, the rest are the parts of analysis/positionController.ts.
 */
export class LoopFamily {
  readonly #plant: PlantResponse;
  readonly #position: ComplexArray;
  readonly #speed: ComplexArray;
  readonly #inertia: ComplexArray;
  readonly #sum: ComplexArray;
  readonly #dualLoop: boolean;
  /** For the weights asked for last: the feedback of each reading, and L of one state. */
  readonly #ofPosition: ComplexArray;
  readonly #ofSpeed: ComplexArray;
  readonly #loop: ComplexArray;

  constructor(p: Parameters, plant: PlantResponse) {
    const controller = new PositionController(p);
    const { length } = plant.omega;
    this.#plant = plant;
    this.#position = new ComplexArray(length);
    this.#speed = new ComplexArray(length);
    this.#inertia = new ComplexArray(length);
    this.#sum = new ComplexArray(length);
    for (let k = 0; k < length; k++) {
      const { position, speed, inertia, sum } = controller.parts(at(plant.z, k));
      this.#position.set(k, position);
      this.#speed.set(k, speed);
      this.#inertia.set(k, inertia);
      this.#sum.set(k, sum);
    }
    this.#dualLoop = p.speedSource === 'motor encoder';
    this.#ofPosition = new ComplexArray(length);
    this.#ofSpeed = new ComplexArray(length);
    this.#loop = new ComplexArray(length);
  }

  /**
   * Peak of |S|, standing and sliding, from the smallest distance of the curve to −1. The curve is
   * taken as straight between the frequencies.
   */
  peakSensitivity(weights: FeedbackWeights): number {
    this.#feedBack(weights);
    this.#close(this.#plant.standing);
    const standing = closestToMinusOne(this.#loop);
    this.#close(this.#plant.sliding);
    return 1 / Math.sqrt(Math.min(standing, closestToMinusOne(this.#loop)));
  }

  /**
   * Smallest phase margin, rad, and gain margin, standing and sliding; interpolated between the
   * frequencies.
   */
  margins(weights: FeedbackWeights): Margins {
    this.#feedBack(weights);
    this.#close(this.#plant.standing);
    const standing = marginsOf(this.#loop);
    this.#close(this.#plant.sliding);
    const sliding = marginsOf(this.#loop);
    return {
      phase: Math.min(standing.phase, sliding.phase),
      gain: Math.min(standing.gain, sliding.gain),
    };
  }

  /**
   * Current command that white noise of rms `noise` (m) in the readings causes in the sliding loop,
   * A rms: from the mean of |C S|² over the frequencies up to half the rate. In a dual loop the
   * readings for the speed have a noise of their own.
   */
  noiseCurrent(weights: FeedbackWeights, noise: number, speedNoise: number): number {
    const { omega, sliding } = this.#plant;
    const { re, im } = this.#loop;
    const { re: pRe, im: pIm } = this.#ofPosition;
    const { re: sRe, im: sIm } = this.#ofSpeed;
    const share = this.#dualLoop ? (speedNoise / noise) ** 2 : 0;
    this.#feedBack(weights);
    this.#close(sliding);
    const square = (k: number) => {
      const gain = this.#dualLoop
        ? valueAt(pRe, k) ** 2 + valueAt(pIm, k) ** 2 + share * (valueAt(sRe, k) ** 2 + valueAt(sIm, k) ** 2)
        : (valueAt(pRe, k) + valueAt(sRe, k)) ** 2 + (valueAt(pIm, k) + valueAt(sIm, k)) ** 2;
      return gain / ((1 + valueAt(re, k)) ** 2 + valueAt(im, k) ** 2);
    };
    let sum = 0;
    let highest = at(omega, 0);
    let before = square(0);
    for (let k = 1; k < omega.length; k++) {
      const value = square(k);
      sum += ((value + before) / 2) * (at(omega, k) - highest);
      before = value;
      highest = at(omega, k);
    }
    return noise * Math.sqrt(sum / highest);
  }

  /** C_x (a + b J) and C_s (c + d J + inertia). */
  #feedBack({ error: a, errorIntegral: b, speed: c, speedIntegral: d }: FeedbackWeights): void {
    const { re: jRe, im: jIm } = this.#sum;
    const { re: iRe, im: iIm } = this.#inertia;
    for (let k = 0; k < jRe.length; k++) {
      const re = valueAt(jRe, k);
      const im = valueAt(jIm, k);
      setProduct(this.#ofPosition, k, this.#position, a + b * re, b * im);
      setProduct(this.#ofSpeed, k, this.#speed, c + d * re + valueAt(iRe, k), d * im + valueAt(iIm, k));
    }
  }

  /** L of one state, for the feedback as it is. */
  #close({ response, speedResponse }: PlantState): void {
    const { re: pRe, im: pIm } = this.#ofPosition;
    const { re: sRe, im: sIm } = this.#ofSpeed;
    const { re, im } = this.#loop;
    if (response === speedResponse) {
      for (let k = 0; k < re.length; k++)
        setProduct(
          this.#loop,
          k,
          response,
          valueAt(pRe, k) + valueAt(sRe, k),
          valueAt(pIm, k) + valueAt(sIm, k),
        );
      return;
    }
    for (let k = 0; k < re.length; k++) {
      setProduct(this.#loop, k, speedResponse, valueAt(sRe, k), valueAt(sIm, k));
      const speedRe = valueAt(re, k);
      const speedIm = valueAt(im, k);
      setProduct(this.#loop, k, response, valueAt(pRe, k), valueAt(pIm, k));
      re[k] = valueAt(re, k) + speedRe;
      im[k] = valueAt(im, k) + speedIm;
    }
  }
}

/** An element of a list becomes that of another, times a number. */
function setProduct(to: ComplexArray, k: number, factor: ComplexArray, re: number, im: number): void {
  const fRe = valueAt(factor.re, k);
  const fIm = valueAt(factor.im, k);
  to.re[k] = fRe * re - fIm * im;
  to.im[k] = fRe * im + fIm * re;
}

/**
 * Square of the smallest distance between −1 and the curve, which is straight between its points.
 */
function closestToMinusOne({ re, im }: ComplexArray): number {
  let min = Number.POSITIVE_INFINITY;
  let xr = valueAt(re, 0);
  let xi = valueAt(im, 0);
  for (let k = 1; k < re.length; k++) {
    const yr = valueAt(re, k);
    const yi = valueAt(im, k);
    const x = 1 + xr;
    const dx = yr - xr;
    const dy = yi - xi;
    // Modes that the axis has both standing and sliding are in the frequencies twice: there the
    // distance is 0.
    const length = dx * dx + dy * dy;
    const along = length > 0 ? Math.min(Math.max(-(x * dx + xi * dy) / length, 0), 1) : 0;
    min = Math.min(min, (x + along * dx) ** 2 + (xi + along * dy) ** 2);
    xr = yr;
    xi = yi;
  }
  return min;
}

/** Phase margin, rad, and gain margin, a factor. */
interface Margins {
  readonly phase: number;
  readonly gain: number;
}

/** Of a curve that is straight between its points; π and Infinity where it crosses nothing. */
function marginsOf({ re, im }: ComplexArray): Margins {
  let phase = Math.PI;
  let gain = Number.POSITIVE_INFINITY;
  let xr = valueAt(re, 0);
  let xi = valueAt(im, 0);
  for (let k = 1; k < re.length; k++) {
    const yr = valueAt(re, k);
    const yi = valueAt(im, k);
    const before = Math.hypot(xr, xi) - 1;
    const after = Math.hypot(yr, yi) - 1;
    if (before > 0 !== after > 0) {
      const share = before / (before - after);
      const x = xr + share * (yr - xr);
      const y = xi + share * (yi - xi);
      phase = Math.min(phase, Math.abs(Math.atan2(-y, -x)));
    }
    if (xi > 0 !== yi > 0) {
      const x = xr + (xi / (xi - yi)) * (yr - xr);
      if (x < 0 && x > -1) gain = Math.min(gain, -1 / x);
    }
    xr = yr;
    xi = yi;
  }
  // At half the rate the curve meets the real axis.
  if (xr < 0 && xr > -1) gain = Math.min(gain, -1 / xr);
  return { phase, gain };
}
