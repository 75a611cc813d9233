import type { FeedbackWeights } from '../../shared/axis/feedback.ts';
import { at, valueAt } from '../../shared/core/at.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { PositionController } from '../analysis/positionController.ts';
import { type Complex, times } from '../math/complex.ts';
import { ComplexArray } from '../math/complexArray.ts';
import type { PlantResponse, PlantState } from './plantResponse.ts';

/** Responses to a unit of each weight, and what is there without any: the observer. */
type Units = Readonly<Record<keyof FeedbackWeights | 'rest', ComplexArray>>;

function newUnits(length: number): Units {
  const zeros = () => new ComplexArray(length);
  return { error: zeros(), errorIntegral: zeros(), speed: zeros(), speedIntegral: zeros(), rest: zeros() };
}

/**
 * The loop of one axis as a function of the weights of its feedback, all else fixed. It is linear in
 * them, so the responses to a unit of each are computed once, and a set of gains costs one pass over
 * the frequencies:
 *
 *   L = L_0 + a L_a + b L_b + c L_c + d L_d
 */
export class LoopFamily {
  readonly #omega: Float64Array;
  readonly #controller: Units;
  readonly #standing: Units;
  readonly #sliding: Units;
  readonly #dualLoop: boolean;
  /** L for the weights asked for last. */
  readonly #loop: ComplexArray;

  constructor(p: Parameters, plant: PlantResponse) {
    const controller = new PositionController(p);
    const { length } = plant.omega;
    this.#omega = Float64Array.from(plant.omega);
    this.#controller = newUnits(length);
    this.#standing = newUnits(length);
    this.#sliding = newUnits(length);
    for (const [k, z] of plant.z.entries()) {
      const { position, speed, inertia, sum } = controller.parts(z);
      const fill = (units: Units, ofPosition: Complex, ofSpeed: Complex) => {
        units.error.set(k, ofPosition);
        units.errorIntegral.set(k, times(ofPosition, sum));
        units.speed.set(k, ofSpeed);
        units.speedIntegral.set(k, times(ofSpeed, sum));
        units.rest.set(k, times(ofSpeed, inertia));
      };
      const through = (units: Units, { response, speedResponse }: PlantState) =>
        fill(units, times(position, at(response, k)), times(speed, at(speedResponse, k)));
      fill(this.#controller, position, speed);
      through(this.#standing, plant.standing);
      through(this.#sliding, plant.sliding);
    }
    this.#dualLoop = p.speedSource === 'motor encoder';
    this.#loop = new ComplexArray(length);
  }

  /**
   * Peak of |S|, standing and sliding, from the smallest distance of the curve to −1. The curve is
   * taken as straight between the frequencies.
   */
  peakSensitivity(weights: FeedbackWeights): number {
    this.#mix(this.#standing, weights);
    const standing = closestToMinusOne(this.#loop);
    this.#mix(this.#sliding, weights);
    return 1 / Math.sqrt(Math.min(standing, closestToMinusOne(this.#loop)));
  }

  /**
   * Smallest phase margin, rad, and gain margin, standing and sliding; interpolated between the
   * frequencies.
   */
  margins(weights: FeedbackWeights): Margins {
    this.#mix(this.#standing, weights);
    const standing = marginsOf(this.#loop);
    this.#mix(this.#sliding, weights);
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
    const { re, im } = this.#loop;
    const { error, errorIntegral, speed, speedIntegral, rest } = this.#controller;
    const { error: a, errorIntegral: b, speed: c, speedIntegral: d } = weights;
    const share = this.#dualLoop ? (speedNoise / noise) ** 2 : 0;
    this.#mix(this.#sliding, weights);
    const square = (k: number) => {
      const pRe = a * valueAt(error.re, k) + b * valueAt(errorIntegral.re, k);
      const pIm = a * valueAt(error.im, k) + b * valueAt(errorIntegral.im, k);
      const sRe = c * valueAt(speed.re, k) + d * valueAt(speedIntegral.re, k) + valueAt(rest.re, k);
      const sIm = c * valueAt(speed.im, k) + d * valueAt(speedIntegral.im, k) + valueAt(rest.im, k);
      const gain = this.#dualLoop
        ? pRe * pRe + pIm * pIm + share * (sRe * sRe + sIm * sIm)
        : (pRe + sRe) ** 2 + (pIm + sIm) ** 2;
      return gain / ((1 + valueAt(re, k)) ** 2 + valueAt(im, k) ** 2);
    };
    let sum = 0;
    let highest = valueAt(this.#omega, 0);
    let before = square(0);
    for (let k = 1; k < this.#omega.length; k++) {
      const omega = valueAt(this.#omega, k);
      const value = square(k);
      sum += ((value + before) / 2) * (omega - highest);
      before = value;
      highest = omega;
    }
    return noise * Math.sqrt(sum / highest);
  }

  #mix(units: Units, { error: a, errorIntegral: b, speed: c, speedIntegral: d }: FeedbackWeights): void {
    const loop = this.#loop;
    weigh(loop.re, units.rest.re, units.error.re, a, units.errorIntegral.re, b, units.speed.re, c);
    weigh(loop.im, units.rest.im, units.error.im, a, units.errorIntegral.im, b, units.speed.im, c);
    if (d === 0) return;
    add(loop.re, units.speedIntegral.re, d);
    add(loop.im, units.speedIntegral.im, d);
  }
}

/** rest + a A + b B + c C, element by element. */
function weigh(
  out: Float64Array,
  rest: Float64Array,
  first: Float64Array,
  a: number,
  second: Float64Array,
  b: number,
  third: Float64Array,
  c: number,
): void {
  for (let k = 0; k < out.length; k++)
    out[k] = valueAt(rest, k) + a * valueAt(first, k) + b * valueAt(second, k) + c * valueAt(third, k);
}

function add(out: Float64Array, fourth: Float64Array, d: number): void {
  for (let k = 0; k < out.length; k++) out[k] = valueAt(out, k) + d * valueAt(fourth, k);
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
