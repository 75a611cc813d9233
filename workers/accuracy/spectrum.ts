import { fourier } from '../identify/fourier.ts';

/** Zeros behind the samples make the spectrum so many times as fine, so that the top of a line is met. */
const FINER = 4;

/** A sine in a record. */
export interface Line {
  /** Whole periods and parts of one over the record. */
  readonly cycles: number;
  readonly amplitude: number;
}

/**
 * Amplitude spectrum of an evenly sampled record. With a Hann window w_k = 1 − cos(2πk/N), whose mean is 1, a sine of amplitude a that
 * runs c times over the record stands in it as a line at c, of height a and four cycles wide:
 *
 *   A(c) = (2/N) |Σ_k w_k (x_k − x̄) exp(−2πj c k/N)|
 *
 * Source: F. J. Harris, On the use of windows for harmonic analysis with the discrete Fourier transform, Proc. IEEE 66(1), 1978.
 */
export class Spectrum {
  /** Cycles over the record from one value to the next. */
  readonly spacing: number;
  /** A(c) at c = 0, spacing, 2 spacing, … up to half the rate of the samples. */
  readonly amplitude: Float64Array;

  constructor(samples: ArrayLike<number>) {
    const n = samples.length;
    const length = 2 ** Math.ceil(Math.log2(FINER * n));
    const [re, im] = [new Float64Array(length), new Float64Array(length)];
    let mean = 0;
    for (let k = 0; k < n; k++) mean += samples[k]! / n;
    for (let k = 0; k < n; k++) re[k] = (1 - Math.cos((2 * Math.PI * k) / n)) * (samples[k]! - mean);
    fourier(re, im);
    this.spacing = n / length;
    this.amplitude = Float64Array.from(
      { length: length / 2 },
      (_, k) => (2 / n) * Math.hypot(re[k]!, im[k]!),
    );
  }

  /** The top of the line about a value that is larger than its neighbours: of the parabola through the three logarithms. */
  top(k: number): Line {
    const [before, at, after] = [-1, 0, 1].map((d) => Math.log(this.amplitude[k + d]!)) as [
      number,
      number,
      number,
    ];
    const shift = (before - after) / (2 * (before - 2 * at + after));
    return {
      cycles: (k + shift) * this.spacing,
      amplitude: Math.exp(at - ((before - after) * shift) / 4),
    };
  }
}
