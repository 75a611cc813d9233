import { valueAt } from '../../shared/core/at.ts';
import { paddedLength, transformOf } from './fourier.ts';
import { mean } from './statistics.ts';

/**
 * Zeros behind the samples make the spectrum so many times as fine, so that the top of a line is
 * met.
 */
const FINER = 4;

/** A sine in a record. */
export interface Line {
  /** Periods over the record, not always whole ones. */
  readonly cycles: number;
  readonly amplitude: number;
}

/**
 * Amplitude spectrum of an evenly sampled record. With a Hann window w_k = 1 − cos(2πk/N), whose
 * mean is 1, a sine of amplitude a that runs c times over the record appears as a line at c, of
 * height a and four cycles wide:
 *
 *   A(c) = (2/N) |Σ_k w_k (x_k − x̄) exp(−2πj c k/N)|
 *
 * Source: F. J. Harris, On the use of windows for harmonic analysis with the discrete Fourier
 * transform, Proc. IEEE 66(1), 1978.
 */
export class Spectrum {
  /** Cycles over the record from one value to the next. */
  readonly spacing: number;
  /** A(c) at c = 0, spacing, 2 spacing, … up to half the rate of the samples. */
  readonly amplitude: Float64Array;

  constructor(samples: Float64Array) {
    const n = samples.length;
    const middle = mean(samples);
    const windowed = samples.map((x, k) => (1 - Math.cos((2 * Math.PI * k) / n)) * (x - middle));
    const transform = transformOf(windowed, paddedLength(FINER * n));
    this.spacing = n / transform.length;
    this.amplitude = transform
      .slice(0, transform.length / 2)
      .magnitudes()
      .map((size) => (2 / n) * size);
  }

  /**
   * The top of the line about a value larger than its neighbours: of the parabola through the three
   * logarithms.
   */
  top(k: number): Line {
    const height = (index: number) => Math.log(valueAt(this.amplitude, index));
    const [before, here, after] = [height(k - 1), height(k), height(k + 1)];
    const shift = (before - after) / (2 * (before - 2 * here + after));
    return {
      cycles: (k + shift) * this.spacing,
      amplitude: Math.exp(here - ((before - after) * shift) / 4),
    };
  }
}
