import {
  coggingTerms,
  interpolationTerms,
  rippleTerms,
  scaleErrorTerms,
} from '../../shared/axis/periodic.ts';
import { positionRate } from '../../shared/core/crossChecks.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';

/** A term of the model that repeats along the axis, or a harmonic of one. */
interface PeriodicTerm {
  /** m */
  readonly period: number;
  /** 1 is the term itself. */
  readonly harmonic: number;
  readonly name: string;
}

/** Multiples of the wave number of cogging that are known: friction and the current limit bend its sine. */
const HARMONICS = [1, 2, 3] as const;
const ORDINALS = { 1: '', 2: '2nd harmonic of ', 3: '3rd harmonic of ' } as const;

/**
 * Every term of the parameters that repeats along the axis and is not zero, as it shows at a speed, m/s; the equations stand in
 * workers/MODEL.md. The loop samples the encoder: what passes faster than half its rate works on the axis as a slower wave.
 */
export function periodicTerms(p: Parameters, speed: number): PeriodicTerm[] {
  const terms: PeriodicTerm[] = [];
  const add = (size: number, period: number, name: string, harmonic = 1) => {
    if (size > 0) terms.push({ period, harmonic, name });
  };
  for (const { amplitude, period } of coggingTerms(p))
    for (const k of HARMONICS) add(amplitude, period / k, `${ORDINALS[k]}cogging`, k);
  for (const { amplitude, period, order } of rippleTerms(p))
    add(amplitude, period, `force ripple, ${order}th order`);
  const addSampled = (size: number, period: number, name: string) => {
    const folded = foldedPeriod(period, speed / positionRate(p));
    add(size, folded, folded > period ? `${name}, folded down by the sampling` : name);
  };
  const [once, twice] = interpolationTerms(p);
  addSampled(once.amplitude, once.period, 'interpolation error, once per signal period');
  addSampled(twice.amplitude, twice.period, 'interpolation error, twice per signal period');
  const [, lead] = scaleErrorTerms(p);
  add(lead.amplitude, lead.period, 'lead error of the screw, once per revolution');
  add(p.encoderResolution, p.encoderResolution, 'counts of the encoder');
  return terms;
}

/**
 * Period that a wave has when it is looked at in steps d, all in m: its own as long as it is two steps or more, else by folding,
 * 1/λ' = |1/λ − n/d| with the nearest whole n (Shannon, Proc. IRE 37(1), 1949).
 */
function foldedPeriod(period: number, step: number): number {
  if (period >= 2 * step) return period;
  const perStep = step / period;
  return step / Math.abs(perStep - Math.round(perStep));
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
  return names.length > 0 ? [...new Set(names)].join(' or ') : null;
}
