import { filterCoefficients } from '../../../shared/axis/loop/filterSections.ts';
import { positionRate } from '../../../shared/core/crossChecks.ts';
import type { FilterNumber } from '../../../shared/core/parameters/filters.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';

/** How a filter is called on the plot. */
export function filterText(p: Parameters, n: FilterNumber): string {
  return `Filter ${n}, ${p[`filter${n}`]}`;
}

/** |H| of a filter of the loop over frequency (Hz), as it is sampled. */
export function filterGain(n: FilterNumber, p: Parameters): (frequency: number) => number {
  const rate = positionRate(p);
  const { b0, b1, b2, a1, a2 } = filterCoefficients(p, n, rate);
  return (frequency) => {
    const angle = (2 * Math.PI * frequency) / rate;
    return absolute(b0, b1, b2, angle) / absolute(1, a1, a2, angle);
  };
}

/** |c0 + c1 z⁻¹ + c2 z⁻²| at z = exp(j angle) */
function absolute(c0: number, c1: number, c2: number, angle: number): number {
  return Math.hypot(
    c0 + c1 * Math.cos(angle) + c2 * Math.cos(2 * angle),
    c1 * Math.sin(angle) + c2 * Math.sin(2 * angle),
  );
}

/**
 * A notch (s² + 2dDωs + ω²)/(s² + 2Dωs + ω²) is half way in power between its floor and 1 where |s² + ω²| = 2Dω|s|: at u times its
 * frequency and at 1/u, with u = D + √(1 + D²), so D = (u − 1/u)/2.
 */
export function edgeOfNotch(width: number): number {
  return width + Math.sqrt(1 + width * width);
}

export function widthOfNotch(edge: number): number {
  return (edge - 1 / edge) / 2;
}
