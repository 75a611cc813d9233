import { type Complex, magnitude, ONE, phase, plus } from '../math/complex.ts';
import { minimum } from '../math/minimum.ts';
import { root } from '../math/root.ts';

/** A response over angular frequency, rad/s: of a continuous loop L(jω), or of a sampled one L(exp(jωT)). */
export type Curve = (omega: number) => Complex;

/** A number and the angular frequency (rad/s) where it was found. */
export interface Found {
  readonly value: number;
  readonly omega: number;
}

/** How an open loop passes −1. For the meaning of each see LoopFigures; here frequencies are angular, rad/s. */
export interface Margins {
  readonly crossovers: readonly number[];
  readonly phaseMargin: Found | null;
  readonly gainMargin: Found | null;
  readonly gainReduction: Found | null;
  readonly delayMargin: Found | null;
  readonly modulusMargin: Found;
}

/** An imaginary part below this share of the real one is rounding: the curve is on the real axis. */
const ON_AXIS = 1e-9;

/**
 * Margins of an open loop. The grid has to be so fine that the curve turns only a little between neighbours; each figure is then found on the
 * curve itself. Of a sampled loop the grid ends at its Nyquist frequency, where the curve meets the real axis once more.
 * Source: Åström, Murray, Feedback Systems, 2nd ed. 2021, ch. 10; modulus margin and delay margin: Landau, Zito, Digital
 * Control Systems, 2006, sec. 2.6.
 *
 * @param grid ascending angular frequencies, rad/s
 * @param values the curve on the grid, if it is known already
 */
export function margins(
  curve: Curve,
  grid: readonly number[],
  values: readonly Complex[] = grid.map(curve),
): Margins {
  const crossovers = crossings(grid, values, (value) => Math.log(magnitude(value)), curve);
  const phases = crossovers.map((omega) => ({ value: fromMinusOne(curve(omega)), omega }));
  const delays = phases.map(({ value, omega }) => ({
    value: (value > 0 ? value : value + 2 * Math.PI) / omega,
    omega,
  }));
  const factors = axisCrossings(curve, grid, values);
  return {
    crossovers,
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
  const falls = crossings(grid, values, above, curve, (before, after) => before > 0 && after <= 0);
  return falls[0] ?? null;
}

/** Least value of a positive function that is known on the grid, refined between its neighbours. */
export function lowest(
  f: (omega: number) => number,
  grid: readonly number[],
  values: readonly number[],
): Found {
  const ends = [0, grid.length - 1].map((i) => ({ value: values[i]!, omega: grid[i]! }));
  const inner: Found[] = [];
  const coarse = Math.min(...values);
  for (let i = 1; i + 1 < grid.length; i++) {
    const value = values[i]!;
    // A valley that is far above the lowest point of the grid cannot win.
    if (value > values[i - 1]! || value > values[i + 1]! || value > 2 * coarse) continue;
    const omega = minimum(f, grid[i - 1]!, grid[i + 1]!);
    inner.push({ value: f(omega), omega });
  }
  return min([...ends, ...inner], ({ value }) => value)!;
}

/** Phase above −180°, in (−π, π]. */
function fromMinusOne(value: Complex): number {
  return phase({ re: -value.re, im: -value.im });
}

/** Factors on the gain that take the curve through −1, and where. */
function axisCrossings(curve: Curve, grid: readonly number[], values: readonly Complex[]): Found[] {
  const onLeft = (a: Complex, b: Complex) => a.re < 0 && b.re < 0;
  const found: number[] = [];
  for (let i = 0; i + 1 < grid.length; i++) {
    const [a, b] = [values[i]!, values[i + 1]!];
    if (onLeft(a, b) && a.im > 0 !== b.im > 0) {
      found.push(root((omega) => fromMinusOne(curve(omega)), grid[i]!, grid[i + 1]!));
    }
  }
  const last = values[values.length - 1]!;
  if (last.re < 0 && Math.abs(last.im) <= ON_AXIS * -last.re) found.push(grid[grid.length - 1]!);
  return found.map((omega) => ({ value: 1 / magnitude(curve(omega)), omega }));
}

function crossings(
  grid: readonly number[],
  values: readonly Complex[],
  measure: (value: Complex) => number,
  curve: Curve,
  counts = (before: number, after: number) => before > 0 !== after > 0,
): number[] {
  const found: number[] = [];
  const measured = values.map(measure);
  for (let i = 0; i + 1 < grid.length; i++) {
    const [before, after] = [measured[i]!, measured[i + 1]!];
    if (counts(before, after)) {
      found.push(root((omega) => measure(curve(omega)), grid[i]!, grid[i + 1]!, before, after));
    }
  }
  return found;
}

function min<T>(items: readonly T[], size: (item: T) => number): T | null {
  return items.reduce<T | null>(
    (best, item) => (best === null || size(item) < size(best) ? item : best),
    null,
  );
}
