import { FILTER_NUMBERS, type FilterNumber } from '../../core/parameters/filters.ts';
import type { Parameters } from '../../core/parameters/table.ts';
import { type BiquadCoefficients, designLeadLag, designLowpass, designNotch } from './biquadDesign.ts';

/** The filters that are on. */
export function filtersOn(p: Parameters): FilterNumber[] {
  return FILTER_NUMBERS.filter((n) => p[`filter${n}`] !== 'off');
}

/** Coefficients of filter n at a rate (Hz), into `out`; one that is off passes everything. */
export function designFilter(out: BiquadCoefficients, p: Parameters, n: FilterNumber, rate: number): void {
  const frequency = p[`filter${n}Frequency`];
  const damping = p[`filter${n}Damping`];
  switch (p[`filter${n}`]) {
    case 'off':
      setCoefficients(out, 1, 0, 0, 0, 0);
      break;
    case 'notch':
      designNotch(out, frequency, damping, p[`filter${n}Depth`], rate);
      break;
    case 'peak':
      designNotch(out, frequency, damping, p[`filter${n}Rise`], rate);
      break;
    case 'low-pass':
      designLowpass(out, frequency, damping, rate);
      break;
    case 'lead-lag':
      designLeadLag(out, frequency, p[`filter${n}Ratio`], rate);
      break;
    case 'coefficients':
      setCoefficients(
        out,
        p[`filter${n}B0`],
        p[`filter${n}B1`],
        p[`filter${n}B2`],
        p[`filter${n}A1`],
        p[`filter${n}A2`],
      );
      break;
  }
}

/** The same as a value of its own. */
export function filterCoefficients(p: Parameters, n: FilterNumber, rate: number): BiquadCoefficients {
  const section: BiquadCoefficients = { b0: 1, b1: 0, b2: 0, a1: 0, a2: 0 };
  designFilter(section, p, n, rate);
  return section;
}

/** Gain at standstill; NaN or Infinity where it has none. */
export function staticGain({ b0, b1, b2, a1, a2 }: BiquadCoefficients): number {
  return (b0 + b1 + b2) / (1 + a1 + a2);
}

function setCoefficients(
  out: BiquadCoefficients,
  b0: number,
  b1: number,
  b2: number,
  a1: number,
  a2: number,
): void {
  out.b0 = b0;
  out.b1 = b1;
  out.b2 = b2;
  out.a1 = a1;
  out.a2 = a2;
}
