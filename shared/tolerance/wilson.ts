import type { Estimate } from './summary.ts';

/** Of the standard normal distribution, 97.5 %. */
const Z = 1.959963984540054;

/**
 * The share of good ones among all, from `count` of n, with its 95 % confidence interval. Source: E. B. Wilson, J. American
 * Statistical Association 22 (1927), 209–212. It takes the machines as drawn at random; those of an even sampling scatter less.
 */
export function wilson(count: number, n: number): Estimate {
  const share = count / n;
  const square = Z * Z;
  const middle = (share + square / (2 * n)) / (1 + square / n);
  const half = (Z * Math.sqrt((share * (1 - share) + square / (4 * n)) / n)) / (1 + square / n);
  return { share, low: Math.max(middle - half, 0), high: Math.min(middle + half, 1) };
}
