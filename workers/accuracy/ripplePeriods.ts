import { shortest } from '../../shared/format.ts';
import { motorConstants } from '../../shared/motor.ts';
import type { Parameters } from '../../shared/parameters/table.ts';

/** A term of the model that repeats along the axis, or a harmonic of one. */
export interface PeriodicTerm {
  /** m */
  readonly period: number;
  /** 1 is the term itself. */
  readonly harmonic: number;
  readonly name: string;
}

/** Multiples of the wave number of cogging that are known: friction and the current limit bend its sine. */
const HARMONICS = [1, 2, 3] as const;
const ORDINALS = { 1: '', 2: '2nd harmonic of ', 3: '3rd harmonic of ' } as const;

/** Every term of the parameters that repeats along the axis and is not zero; the equations stand in workers/MODEL.md. */
export function periodicTerms(p: Parameters): PeriodicTerm[] {
  const { polePitch } = motorConstants(p);
  const terms: PeriodicTerm[] = [];
  const add = (size: number, period: number, name: string, harmonic = 1) => {
    if (size > 0) terms.push({ period, harmonic, name });
  };
  for (const [size, period] of [
    [p.cogging1, p.cogging1Period],
    [p.cogging2, p.cogging2Period],
    [p.cogging3, p.cogging3Period],
  ] as const)
    for (const k of HARMONICS) add(size, period / k, `${ORDINALS[k]}cogging at ${shortest(period, 'mm')}`, k);
  add(p.ripple6, polePitch / 3, 'force ripple, 6th order');
  add(p.ripple12, polePitch / 6, 'force ripple, 12th order');
  add(p.interpolation1, p.signalPeriod, 'interpolation error, once per signal period');
  add(p.interpolation2, p.signalPeriod / 2, 'interpolation error, twice per signal period');
  add(p.encoderResolution, p.encoderResolution, 'counts of the encoder');
  return terms;
}

/**
 * What a line at a period comes from; null when it is the own period of no term. Over a length L two waves are the same as long as they
 * are less than half a wave apart in it: |1/λ − 1/λ_term| < 1/(2L). Terms that L cannot tell apart are named together; a harmonic only
 * where no term itself fits.
 */
export function causeOf(terms: readonly PeriodicTerm[], period: number, length: number): string | null {
  const fitting = terms.filter((term) => Math.abs(1 / period - 1 / term.period) < 1 / (2 * length));
  const lowest = Math.min(...fitting.map(({ harmonic }) => harmonic));
  const names = fitting.filter(({ harmonic }) => harmonic === lowest).map(({ name }) => name);
  return names.length > 0 ? names.join(' or ') : null;
}
