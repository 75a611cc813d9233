import { fourier } from '../fourier.ts';

/** Share of the record at each end over which it is faded in and out. */
const FADE = 0.05;
/** Lines to each side over which powers are averaged. */
const NEIGHBOURS = 6;

/** Spectral lines of a cause and its effect, as real and imaginary parts. */
export interface Lines {
  /** Hz, evenly spaced. */
  readonly frequency: Float64Array;
  /** How many lines share the noise of one, since zeros follow the record. */
  readonly overlap: number;
  readonly causeRe: Float64Array;
  readonly causeIm: Float64Array;
  readonly effectRe: Float64Array;
  readonly effectIm: Float64Array;
}

/**
 * Spectra of the longest stretch of two records without a gap, less their means, faded at both ends so that its ends do not leak into all
 * lines (Bendat, Piersol, Random Data, 4th ed. 2010, 11.5.2), and followed by zeros to a power of two.
 */
export function linesOf(cause: Float64Array, effect: Float64Array, period: number): Lines {
  const { from, to } = longestStretch(cause, effect);
  const size = 2 ** Math.ceil(Math.log2(to - from));
  const spectrum = (record: Float64Array) => {
    const part = record.subarray(from, to);
    const mean = part.reduce((sum, value) => sum + value, 0) / part.length;
    const edge = Math.ceil(FADE * part.length);
    const re = new Float64Array(size);
    part.forEach((value, k) => {
      const inside = Math.min(k, part.length - 1 - k) + 0.5;
      re[k] = (value - mean) * (inside < edge ? Math.sin((Math.PI / 2) * (inside / edge)) ** 2 : 1);
    });
    const im = new Float64Array(size);
    fourier(re, im);
    return { re: re.subarray(0, size / 2), im: im.subarray(0, size / 2) };
  };
  const [x, y] = [spectrum(cause), spectrum(effect)];
  const frequency = Float64Array.from({ length: size / 2 }, (_, k) => k / (size * period));
  const overlap = size / (to - from);
  return { frequency, overlap, causeRe: x.re, causeIm: x.im, effectRe: y.re, effectIm: y.im };
}

/** The lines between two frequencies. */
export function between({ frequency, overlap, ...spectra }: Lines, low: number, high: number): Lines {
  const from = frequency.findIndex((f) => f >= low);
  const past = frequency.findIndex((f) => f > high);
  const cut = (values: Float64Array) => values.slice(from, past < 0 ? values.length : past);
  return {
    frequency: cut(frequency),
    overlap,
    causeRe: cut(spectra.causeRe),
    causeIm: cut(spectra.causeIm),
    effectRe: cut(spectra.effectRe),
    effectIm: cut(spectra.effectIm),
  };
}

/** Sum over each line and its neighbours, divided by their number. */
export function smoothed(values: Float64Array): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let k = 0; k < values.length; k++) sums[k + 1] = sums[k]! + values[k]!;
  return values.map((_, k) => {
    const from = Math.max(0, k - NEIGHBOURS);
    const to = Math.min(values.length, k + NEIGHBOURS + 1);
    return (sums[to]! - sums[from]!) / (to - from);
  });
}

/** First row and the row past the last. */
function longestStretch(a: Float64Array, b: Float64Array): { from: number; to: number } {
  let best = { from: 0, to: 0 };
  for (let from = 0, k = 0; k <= a.length; k++) {
    if (k < a.length && !Number.isNaN(a[k]! + b[k]!)) continue;
    if (k - from > best.to - best.from) best = { from, to: k };
    from = k + 1;
  }
  return best;
}
