import { at, valueAt } from '../../shared/core/at.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { PositionController } from '../analysis/positionController.ts';
import { type Complex, times } from '../math/complex.ts';
import { ComplexArray } from '../math/complexArray.ts';
import type { PlantResponse, PlantState } from './plantResponse.ts';

export interface Gains {
  readonly Kp: number;
  readonly Ki: number;
  readonly Kd: number;
}

/** A value for a unit of each gain. */
type Units<T> = Readonly<Record<keyof Gains, T>>;

/**
 * The loop of one axis as a function of the gains, all else fixed. It is linear in them, so the
 * responses to a unit of each are computed once, and a set of gains costs one pass over the
 * frequencies:
 *
 *   L = Kp L_p + Ki L_i + Kd L_d
 */
export class LoopFamily {
  readonly #omega: Float64Array;
  readonly #controller: Units<ComplexArray>;
  readonly #standing: Units<ComplexArray>;
  readonly #sliding: Units<ComplexArray>;
  /** L for the gains asked for last. */
  readonly #loop: ComplexArray;

  constructor(p: Parameters, plant: PlantResponse) {
    const responses = (gains: Gains) => {
      const controller = new PositionController({ ...p, ...gains });
      return plant.z.map((z) => controller.feedback(z));
    };
    const units: Units<readonly Complex[]> = {
      Kp: responses({ Kp: 1, Ki: 0, Kd: 0 }),
      Ki: responses({ Kp: 0, Ki: 1, Kd: 0 }),
      Kd: responses({ Kp: 0, Ki: 0, Kd: 1 }),
    };
    const through = ({ response }: PlantState) =>
      ofEach(units, (unit) => ComplexArray.from(unit.map((value, k) => times(value, at(response, k)))));
    this.#omega = Float64Array.from(plant.omega);
    this.#controller = ofEach(units, (unit) => ComplexArray.from(unit));
    this.#standing = through(plant.standing);
    this.#sliding = through(plant.sliding);
    this.#loop = new ComplexArray(plant.omega.length);
  }

  /**
   * Peak of |S|, standing and sliding, from the smallest distance of the curve to −1. The curve is
   * taken as straight between the frequencies.
   */
  peakSensitivity(gains: Gains): number {
    this.#mix(this.#standing, gains);
    const standing = closestToMinusOne(this.#loop);
    this.#mix(this.#sliding, gains);
    return 1 / Math.sqrt(Math.min(standing, closestToMinusOne(this.#loop)));
  }

  /**
   * Smallest phase margin, rad, and gain margin, standing and sliding; interpolated between the
   * frequencies.
   */
  margins(gains: Gains): Margins {
    this.#mix(this.#standing, gains);
    const standing = marginsOf(this.#loop);
    this.#mix(this.#sliding, gains);
    const sliding = marginsOf(this.#loop);
    return {
      phase: Math.min(standing.phase, sliding.phase),
      gain: Math.min(standing.gain, sliding.gain),
    };
  }

  /**
   * Current command that white noise of rms `noise` (m) in the readings causes in the sliding loop,
   * A rms: from the mean of |C S|² over the frequencies up to half the rate.
   */
  noiseCurrent({ Kp, Ki, Kd }: Gains, noise: number): number {
    const { re, im } = this.#loop;
    const controller = this.#controller;
    this.#mix(this.#sliding, { Kp, Ki, Kd });
    const square = (k: number) => {
      const cRe =
        Kp * valueAt(controller.Kp.re, k) +
        Ki * valueAt(controller.Ki.re, k) +
        Kd * valueAt(controller.Kd.re, k);
      const cIm =
        Kp * valueAt(controller.Kp.im, k) +
        Ki * valueAt(controller.Ki.im, k) +
        Kd * valueAt(controller.Kd.im, k);
      return (cRe * cRe + cIm * cIm) / ((1 + valueAt(re, k)) ** 2 + valueAt(im, k) ** 2);
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

  #mix(units: Units<ComplexArray>, { Kp, Ki, Kd }: Gains): void {
    const { re, im } = this.#loop;
    const { re: pRe, im: pIm } = units.Kp;
    const { re: iRe, im: iIm } = units.Ki;
    const { re: dRe, im: dIm } = units.Kd;
    for (let k = 0; k < re.length; k++) {
      re[k] = Kp * valueAt(pRe, k) + Ki * valueAt(iRe, k) + Kd * valueAt(dRe, k);
      im[k] = Kp * valueAt(pIm, k) + Ki * valueAt(iIm, k) + Kd * valueAt(dIm, k);
    }
  }
}

function ofEach<T, R>({ Kp, Ki, Kd }: Units<T>, make: (unit: T) => R): Units<R> {
  return { Kp: make(Kp), Ki: make(Ki), Kd: make(Kd) };
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
