import { coggingTerms, rippleTerms } from '../../../shared/axis/periodic.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { rms } from '../../math/statistics.ts';
import type { Windows } from './windows.ts';

/**
 * A column weaker than this share of the force, or of its own amplitude, is averaged away by the
 * windows and would only cost certainty.
 */
const NEGLIGIBLE = 1e-3;

/**
 * What else stands in a force record and hangs on the position x1 of the motor: ripple of the force
 * constant, which multiplies the force, and cogging, which adds to it. Their periods are those of
 * the parameters; amplitudes and phases are fitted, since no datasheet has them. Columns of
 * averages, cosine and sine of each order.
 */
export function rippleColumns(
  windows: Windows,
  position: Float64Array,
  force: Float64Array,
  p: Parameters,
): Float64Array[] {
  const columns: Float64Array[] = [];
  const add = (period: number, amplitude: Float64Array | null) => {
    const pair = [Math.cos, Math.sin].map((wave) =>
      windows.average(position.map((x, k) => (amplitude?.[k] ?? 1) * wave((2 * Math.PI * x) / period))),
    );
    const size = amplitude === null ? 1 : rms(windows.average(amplitude));
    if (pair.some((column) => rms(column) > NEGLIGIBLE * size)) columns.push(...pair);
  };
  for (const { period } of rippleTerms(p)) add(period, force);
  for (const { period } of coggingTerms(p)) add(period, null);
  return columns;
}
