import { at } from '../../shared/core/at.ts';
import type { Complex } from '../math/complex.ts';
import { NormalEquations } from '../math/normalEquations.ts';

/**
 * Amplitude of the part of `values` that oscillates with `phases`, rad, by a least squares fit of
 *
 *   a sin φ + b cos φ + c + d φ
 *
 * so that an offset and a slow drift do not affect it; the samples need not divide the period. The
 * complex amplitude is a + jb: the phase counts from the sine. NaN for one sample per period or
 * fewer, which do not determine it.
 */
export function demodulate(phases: readonly number[], values: readonly number[]): Complex {
  const equations = new NormalEquations(4);
  const middle = ((phases[0] ?? 0) + (phases.at(-1) ?? 0)) / 2;
  for (const [k, phi] of phases.entries())
    equations.add([Math.sin(phi), Math.cos(phi), 1, phi - middle], at(values, k));
  const [re = Number.NaN, im = Number.NaN] = equations.solve() ?? [];
  return { re, im };
}
