import type { Complex } from '../analysis/complex.ts';
import { Matrix, solve } from '../analysis/matrix.ts';

/**
 * Amplitude of the part of `values` that swings with `phases`: least squares of
 *
 *   a sin φ + b cos φ + c + d φ
 *
 * so that an offset and a slow drift stay out of it; samples need not divide the period. The complex amplitude is a + jb: the phase
 * counts from the sine. Over one sample per period or fewer there is no answer.
 */
export function demodulate(phases: ArrayLike<number>, values: ArrayLike<number>): Complex {
  const normal = new Matrix(4, 4);
  const right = new Float64Array(4);
  const middle = (phases[0]! + phases[phases.length - 1]!) / 2;
  for (let k = 0; k < phases.length; k++) {
    const phi = phases[k]!;
    const basis = [Math.sin(phi), Math.cos(phi), 1, phi - middle];
    for (let i = 0; i < 4; i++) {
      right[i]! += basis[i]! * values[k]!;
      for (let j = 0; j < 4; j++) normal.add(i, j, basis[i]! * basis[j]!);
    }
  }
  const fit = solve(normal, right);
  return fit === null ? { re: Number.NaN, im: Number.NaN } : { re: fit[0]!, im: fit[1]! };
}
