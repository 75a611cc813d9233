import { at, valueAt } from '../../../shared/core/at.ts';
import { signOfLife } from '../../../shared/core/signOfLife.ts';
import { median, sumOfSquares } from '../../math/statistics.ts';

/** Power of the cosine: φ has continuous derivatives up to the fifth. */
const COEFFICIENTS = [20, 30, 12, 2] as const;

/*
 * Derivatives of a noisy record without differentiating it. With a smooth window φ that vanishes
 * outside ±h,
 *
 *   ∫ φ(t − t_c) s⁽ⁿ⁾(t) dt = (−1)ⁿ ∫ φ⁽ⁿ⁾(t − t_c) s(t) dt
 *
 * so a linear differential equation between records becomes a linear equation between such
 * averages, exactly, with no initial state and no filter transient. Here φ(t) = cos⁶(πt/2h)/area =
 * (20 + 30 cos u + 12 cos 2u + 2 cos 3u)/40h, u = πt/h. Source: Shinbrot, Trans. ASME 79, 1957
 * (method functions); Preisig, Rippin, Computers & Chemical Engineering 17(1), 1993 (review).
 */
export class Windows {
  readonly count: number;
  /** Samples from a centre to the edge of its window, and from centre to centre. */
  readonly half: number;
  readonly hop: number;
  readonly #kernels: readonly Float64Array[];

  /** @param halfTime h, s; neighbouring windows overlap by three quarters */
  constructor(
    readonly period: number,
    readonly samples: number,
    halfTime: number,
  ) {
    this.half = Math.round(halfTime / period);
    this.hop = Math.max(1, this.half >> 1);
    this.count = Math.max(0, Math.floor((samples - 1 - 2 * this.half) / this.hop) + 1);
    this.#kernels = [0, 1, 2, 3, 4].map((order) => this.#kernel(order));
  }

  /** Sample at the centre of a window. */
  centre(window: number): number {
    return this.half + window * this.hop;
  }

  /**
   * Averages of the n-th derivative of a series, n = 0 to 4, one for each window. NaN where the
   * window has a gap.
   */
  average(series: Float64Array, order = 0): Float64Array {
    const kernel = this.#kernelOf(order);
    const out = new Float64Array(this.count);
    for (let window = 0; window < this.count; window++) {
      signOfLife();
      const from = window * this.hop;
      let sum = 0;
      for (let k = 0; k < kernel.length; k++) sum += valueAt(kernel, k) * valueAt(series, from + k);
      out[window] = sum;
    }
    return out;
  }

  /** Rms of the n-th derivative that white noise of rms 1 in the series appears to have. */
  noiseGain(order: number): number {
    return Math.sqrt(sumOfSquares(this.#kernelOf(order)));
  }

  /**
   * How many windows share the noise of one when white noise in the series is averaged: the sum of
   * the correlations between them.
   */
  get overlap(): number {
    const { hop } = this;
    const kernel = this.#kernelOf(0);
    const shared = (shift: number) => {
      let sum = 0;
      for (let k = shift; k < kernel.length; k++) sum += valueAt(kernel, k) * valueAt(kernel, k - shift);
      return sum;
    };
    let sum = 1;
    for (let shift = hop; shift < kernel.length; shift += hop) sum += (2 * shared(shift)) / shared(0);
    return sum;
  }

  #kernelOf(order: number): Float64Array {
    return at(this.#kernels, order);
  }

  #kernel(order: number): Float64Array {
    const { half, period } = this;
    const h = half * period;
    const scale = (period / (40 * h)) * (order % 2 === 0 ? 1 : -1);
    return Float64Array.from({ length: 2 * half + 1 }, (_, k) => {
      const u = (Math.PI * (k - half)) / half;
      let sum = 0;
      COEFFICIENTS.forEach((coefficient, m) => {
        const rate = (m * Math.PI) / h;
        if (m > 0 || order === 0)
          sum += coefficient * rate ** order * Math.cos(m * u + (order * Math.PI) / 2);
      });
      return scale * sum;
    });
  }
}

/**
 * Rms of the white noise of a series, from its fourth differences, which contain next to nothing of
 * the motion and multiply white noise by √70. The median ignores an occasional jerk. Quantisation
 * counts as noise.
 */
export function noiseOf(series: Float64Array): number {
  const sizes: number[] = [];
  for (let k = 4; k < series.length; k++) {
    const back = (rows: number) => valueAt(series, k - rows);
    const difference = back(0) - 4 * back(1) + 6 * back(2) - 4 * back(3) + back(4);
    if (!Number.isNaN(difference)) sizes.push(Math.abs(difference));
  }
  if (sizes.length === 0) return 0;
  // The median of |n| is 0.6745 of the rms of a normal n.
  return median(sizes) / 0.6745 / Math.sqrt(70);
}
