import { at } from '../../shared/core/at.ts';
import { type Complex, magnitude, ONE, phase, plus } from '../math/complex.ts';
import { minimum } from '../math/minimum.ts';
import { root } from '../math/root.ts';

/**
 * A response over angular frequency, rad/s: of a continuous loop L(jω), or of a sampled one
 * L(exp(jωT)).
 */
export type Curve = (omega: number) => Complex;

/** A number and the angular frequency (rad/s) where it was found. */
export interface Found {
  readonly value: number;
  readonly omega: number;
}

/**
 * How an open loop passes −1. For the meaning of each figure see LoopFigures; here frequencies are
 * angular, rad/s.
 */
interface Margins {
  readonly crossovers: readonly number[];
  /** Those where |L| falls. */
  readonly falls: readonly number[];
  readonly phaseMargin: Found | null;
  readonly gainMargin: Found | null;
  readonly gainReduction: Found | null;
  readonly delayMargin: Found | null;
  readonly modulusMargin: Found;
}

/**
 * An imaginary part below this share of the real one is rounding: the curve is on the real axis.
 */
const ON_AXIS = 1e-9;

/**
 * Margins of an open loop. The grid must be so fine that the curve turns only a little between
 * neighbours; each figure is then found on the curve itself. The grid of a sampled loop ends at its
 * Nyquist frequency, where the curve meets the real axis once more. Source: Åström, Murray,
 * Feedback Systems, 2nd ed. 2021, ch. 10; modulus margin and delay margin: Landau, Zito, Digital
 * Control Systems, 2006, sec. 2.6.
 *
 * @param grid ascending angular frequencies, rad/s
 * @param values the curve on the grid, where it is known already
 */
export function margins(
  curve: Curve,
  grid: readonly number[],
  values: readonly Complex[] = grid.map(curve),
): Margins {
  const gain = (value: Complex) => Math.log(magnitude(value));
  const passed = [...crossings(grid, values, gain, curve)];
  const crossovers = passed.map(({ omega }) => omega);
  const phases = crossovers.map((omega) => ({ value: fromMinusOne(curve(omega)), omega }));
  const delays = phases.map(({ value, omega }) => ({
    value: (value > 0 ? value : value + 2 * Math.PI) / omega,
    omega,
  }));
  const factors = axisCrossings(curve, grid, values);
  return {
    crossovers,
    falls: passed.filter(({ falls }) => falls).map(({ omega }) => omega),
    phaseMargin: min(phases, ({ value }) => Math.abs(value)),
    gainMargin: min(
      factors.filter(({ value }) => value > 1),
      ({ value }) => value,
    ),
    gainReduction: min(
      factors.filter(({ value }) => value < 1),
      ({ value }) => -value,
    ),
    delayMargin: min(delays, ({ value }) => value),
    modulusMargin: lowest(
      (omega) => magnitude(plus(ONE, curve(omega))),
      grid,
      values.map((value) => magnitude(plus(ONE, value))),
    ),
  };
}

/** Lowest frequency where |T| falls below 1/√2, rad/s; null when it does not. */
export function bandwidth(curve: Curve, grid: readonly number[], values: readonly Complex[]): number | null {
  const above = (value: Complex) => Math.log(magnitude(value) * Math.SQRT2);
  for (const { omega, falls } of crossings(grid, values, above, curve)) if (falls) return omega;
  return null;
}

/**
 * Smallest value of a positive function that is known on the grid, refined between its neighbours.
 */
export function lowest(
  f: (omega: number) => number,
  grid: readonly number[],
  values: readonly number[],
): Found {
  const last = grid.length - 1;
  let best = { value: at(values, 0), omega: at(grid, 0) };
  const take = (value: number, omega: number) => {
    if (value < best.value) best = { value, omega };
  };
  take(at(values, last), at(grid, last));
  const coarse = Math.min(...values);
  for (let i = 1; i < last; i++) {
    const value = at(values, i);
    // A local minimum far above the lowest point of the grid cannot be the smallest.
    if (value > at(values, i - 1) || value > at(values, i + 1) || value > 2 * coarse) continue;
    const omega = minimum(f, at(grid, i - 1), at(grid, i + 1));
    take(f(omega), omega);
  }
  return best;
}

/** Phase above −180°, in (−π, π]. */
function fromMinusOne(value: Complex): number {
  return phase({ re: -value.re, im: -value.im });
}

/** Factors on the gain that take the curve through −1, and where. */
function axisCrossings(curve: Curve, grid: readonly number[], values: readonly Complex[]): Found[] {
  const found: number[] = [];
  let last: Complex | undefined;
  for (const [i, value] of values.entries()) {
    if (last && last.re < 0 && value.re < 0 && last.im > 0 !== value.im > 0)
      found.push(root((omega) => fromMinusOne(curve(omega)), at(grid, i - 1), at(grid, i)));
    last = value;
  }
  if (last && last.re < 0 && Math.abs(last.im) <= ON_AXIS * -last.re) found.push(at(grid, grid.length - 1));
  return found.map((omega) => ({ value: 1 / magnitude(curve(omega)), omega }));
}

/** Where a measure of the curve passes zero, ascending, and whether it falls there. */
function* crossings(
  grid: readonly number[],
  values: readonly Complex[],
  measure: (value: Complex) => number,
  curve: Curve,
): Generator<{ readonly omega: number; readonly falls: boolean }> {
  let before: number | undefined;
  for (const [i, value] of values.entries()) {
    const after = measure(value);
    if (before !== undefined && before > 0 !== after > 0) {
      const omega = root((w) => measure(curve(w)), at(grid, i - 1), at(grid, i), before, after);
      yield { omega, falls: before > 0 };
    }
    before = after;
  }
}

function min<T>(items: readonly T[], size: (item: T) => number): T | null {
  return items.reduce<T | null>(
    (best, item) => (best === null || size(item) < size(best) ? item : best),
    null,
  );
}
