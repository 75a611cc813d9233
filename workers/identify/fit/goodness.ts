import { valueAt } from '../../../shared/core/at.ts';
import type { ForceResidual, Goodness } from '../../../shared/protocol/fit.ts';
import { mean, rms } from '../../math/statistics.ts';

/**
 * Number of lags, and χ² with as many degrees of freedom at 99 % (tabulated, e.g. Abramowitz &
 * Stegun, table 26.8).
 */
const LAGS = 5;
const CHI_SQUARE = 15.086;
/** Windows overlap by three quarters: every fourth has independent noise. */
const STRIDE = 4;
const FEWEST = 4 * LAGS;
/**
 * A residual above this share of the rms force means that the model leaves out something that
 * matters.
 */
const POOR = 0.01;

/**
 * How well the model describes the forces.
 *
 * @param widened half-width of the mass over that with a white residual
 */
export function goodnessOf({ measured, residual, used }: ForceResidual, widened: number): Goodness {
  const fitted = (values: Float64Array) => values.filter((_, k) => used[k] === 1);
  const left = fitted(residual);
  const rmsResidual = rms(left);
  const rmsForce = rms(fitted(measured));
  const whiteness = ljungBox(left.filter((_, k) => k % STRIDE === 0));
  const isWhite = whiteness === null || whiteness <= CHI_SQUARE;
  return {
    rmsResidual,
    rmsForce,
    explained: 1 - (rmsResidual / rmsForce) ** 2,
    whiteness,
    whiteLimit: CHI_SQUARE,
    widened,
    verdict: rmsResidual > POOR * rmsForce ? 'poor' : isWhite ? 'white' : 'not white',
  };
}

/**
 * n (n + 2) Σ ρ_k²/(n − k) over the autocorrelations at lags 1 to 5; null where there are too few
 * values to tell. Source: Ljung, Box, Biometrika 65(2), 1978.
 */
export function ljungBox(values: Float64Array): number | null {
  const n = values.length;
  if (n < FEWEST) return null;
  const middle = mean(values);
  const off = values.map((value) => value - middle);
  const product = (lag: number) => {
    let sum = 0;
    for (let k = lag; k < n; k++) sum += valueAt(off, k) * valueAt(off, k - lag);
    return sum;
  };
  const power = product(0);
  let sum = 0;
  for (let lag = 1; lag <= LAGS; lag++) sum += (product(lag) / power) ** 2 / (n - lag);
  return n * (n + 2) * sum;
}
