import type { Parameters } from '../../shared/core/parameters/table.ts';
import { PositionController } from '../analysis/positionController.ts';
import { type Complex, times } from '../math/complex.ts';
import type { PlantResponse, PlantState } from './plantResponse.ts';

export interface Gains {
  readonly Kp: number;
  readonly Ki: number;
  readonly Kd: number;
}

/** Real and imaginary parts of the responses to a unit of each gain. */
type Parts = readonly [
  pRe: Float64Array,
  pIm: Float64Array,
  iRe: Float64Array,
  iIm: Float64Array,
  dRe: Float64Array,
  dIm: Float64Array,
];

/**
 * The loop of one axis over the gains, all else fixed. It is linear in them, so the responses to a unit of each are computed once and a set of
 * gains costs one pass over the frequencies: L = Kp L_p + Ki L_i + Kd L_d.
 */
export class LoopFamily {
  private readonly omega: readonly number[];
  private readonly controller: Parts;
  /** Standing and sliding. */
  private readonly loops: readonly Parts[];
  private readonly re: Float64Array;
  private readonly im: Float64Array;

  constructor(p: Parameters, plant: PlantResponse) {
    const units = [
      { Kp: 1, Ki: 0, Kd: 0 },
      { Kp: 0, Ki: 1, Kd: 0 },
      { Kp: 0, Ki: 0, Kd: 1 },
    ].map((gains) => {
      const controller = new PositionController({ ...p, ...gains });
      return plant.z.map((z) => controller.feedback(z));
    });
    const through = ({ response }: PlantState) =>
      parts(units.map((unit) => unit.map((value, k) => times(value, response[k]!))));
    this.omega = plant.omega;
    this.controller = parts(units);
    this.loops = [through(plant.standing), through(plant.sliding)];
    this.re = new Float64Array(plant.omega.length);
    this.im = new Float64Array(plant.omega.length);
  }

  /** Peak of |S|, standing and sliding: the closest that the curve, straight between the frequencies, comes to −1. */
  peakSensitivity(gains: Gains): number {
    const { re, im } = this;
    let min = Number.POSITIVE_INFINITY;
    for (const loop of this.loops) {
      this.mix(loop, gains);
      for (let k = 0; k + 1 < re.length; k++) {
        const x = 1 + re[k]!;
        const y = im[k]!;
        const dx = re[k + 1]! - re[k]!;
        const dy = im[k + 1]! - im[k]!;
        // Modes that the axis has standing and sliding are in the frequencies twice: nothing lies between.
        const length = dx * dx + dy * dy;
        const along = length > 0 ? Math.min(Math.max(-(x * dx + y * dy) / length, 0), 1) : 0;
        min = Math.min(min, (x + along * dx) ** 2 + (y + along * dy) ** 2);
      }
    }
    return 1 / Math.sqrt(min);
  }

  /** Least phase margin, rad, and gain margin, standing and sliding; interpolated between the frequencies. */
  margins(gains: Gains): { phase: number; gain: number } {
    let phase = Math.PI;
    let gain = Number.POSITIVE_INFINITY;
    const { re, im } = this;
    for (const loop of this.loops) {
      this.mix(loop, gains);
      for (let k = 0; k + 1 < re.length; k++) {
        const [before, after] = [Math.hypot(re[k]!, im[k]!) - 1, Math.hypot(re[k + 1]!, im[k + 1]!) - 1];
        if (before > 0 !== after > 0) {
          const share = before / (before - after);
          const x = re[k]! + share * (re[k + 1]! - re[k]!);
          const y = im[k]! + share * (im[k + 1]! - im[k]!);
          phase = Math.min(phase, Math.abs(Math.atan2(-y, -x)));
        }
        if (im[k]! > 0 !== im[k + 1]! > 0) {
          const x = re[k]! + (im[k]! / (im[k]! - im[k + 1]!)) * (re[k + 1]! - re[k]!);
          if (x < 0 && x > -1) gain = Math.min(gain, -1 / x);
        }
      }
      const last = re[re.length - 1]!;
      if (last < 0 && last > -1) gain = Math.min(gain, -1 / last);
    }
    return { phase, gain };
  }

  /**
   * Current command that white noise of rms `noise` (m) in the readings makes the sliding loop give, A rms: the mean of |C S|² over the
   * frequencies up to half the rate.
   */
  noiseCurrent(gains: Gains, noise: number): number {
    const { re, im, omega } = this;
    const [pRe, pIm, iRe, iIm, dRe, dIm] = this.controller;
    this.mix(this.loops[this.loops.length - 1]!, gains);
    const square = (k: number) => {
      const cRe = gains.Kp * pRe[k]! + gains.Ki * iRe[k]! + gains.Kd * dRe[k]!;
      const cIm = gains.Kp * pIm[k]! + gains.Ki * iIm[k]! + gains.Kd * dIm[k]!;
      return (cRe * cRe + cIm * cIm) / ((1 + re[k]!) ** 2 + im[k]! ** 2);
    };
    let sum = 0;
    for (let k = 1; k < omega.length; k++)
      sum += ((square(k) + square(k - 1)) / 2) * (omega[k]! - omega[k - 1]!);
    return noise * Math.sqrt(sum / omega[omega.length - 1]!);
  }

  private mix([pRe, pIm, iRe, iIm, dRe, dIm]: Parts, { Kp, Ki, Kd }: Gains): void {
    for (let k = 0; k < this.re.length; k++) {
      this.re[k] = Kp * pRe[k]! + Ki * iRe[k]! + Kd * dRe[k]!;
      this.im[k] = Kp * pIm[k]! + Ki * iIm[k]! + Kd * dIm[k]!;
    }
  }
}

function parts(units: readonly (readonly Complex[])[]): Parts {
  return units.flatMap((values) => [
    Float64Array.from(values, ({ re }) => re),
    Float64Array.from(values, ({ im }) => im),
  ]) as unknown as Parts;
}
