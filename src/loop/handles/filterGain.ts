import { type BiquadCoefficients, designLowpass, designNotch } from '../../../shared/axis/biquadDesign.ts';
import { positionRate } from '../../../shared/core/crossChecks.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';

export type FilterName = 'notch1' | 'notch2' | 'lowpass';

export const FILTER_NAMES: readonly FilterName[] = ['notch1', 'notch2', 'lowpass'];

export const FILTER_TEXT: Readonly<Record<FilterName, string>> = {
  notch1: 'Notch 1',
  notch2: 'Notch 2',
  lowpass: 'Low-pass',
};

/** |H| of a filter of the loop over frequency (Hz), as it is sampled. */
export function filterGain(name: FilterName, p: Parameters): (frequency: number) => number {
  const rate = positionRate(p);
  const section: BiquadCoefficients = { b0: 1, b1: 0, b2: 0, a1: 0, a2: 0 };
  if (name === 'lowpass') designLowpass(section, p.lowpassFrequency, p.lowpassDamping, rate);
  else designNotch(section, p[`${name}Frequency`], p[`${name}Width`], p[`${name}Depth`], rate);
  const { b0, b1, b2, a1, a2 } = section;
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
