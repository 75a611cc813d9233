import { gainChanges } from '../../shared/axis/loopGains.ts';
import { rounded } from '../../shared/axis/tunedValue.ts';
import { movedMass } from '../../shared/core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';

interface Notch {
  /** Hz */
  readonly frequency: number;
  /** Damping of its poles, and gain at its centre. */
  readonly width: number;
  readonly depth: number;
}

export interface Filters {
  /** At most two. */
  readonly notches: readonly Notch[];
  /** Corner of the low-pass, Hz, and its damping; null: none. */
  readonly lowpass: { readonly frequency: number; readonly damping: number } | null;
}

/** A position loop before its speed is decided: everything but the crossover. */
export interface Shape extends Filters {
  /**
   * Corner frequencies of integrator and lead as shares of the crossover; the integrator's is the
   * lower one.
   */
  readonly integratorCorner: number;
  readonly leadCorner: number;
  /** Filter of the measured speed, s. */
  readonly derivativeTime: number;
  /** Bandwidth of the disturbance observer, Hz; null without. */
  readonly observerBandwidth: number | null;
}

export const NO_FILTERS: Filters = { notches: [], lowpass: null };

/** The filters of a scene as set. */
export function filtersOf(p: Parameters): Filters {
  const notches: Notch[] = [];
  if (p.notch1) notches.push({ frequency: p.notch1Frequency, width: p.notch1Width, depth: p.notch1Depth });
  if (p.notch2) notches.push({ frequency: p.notch2Frequency, width: p.notch2Width, depth: p.notch2Depth });
  return {
    notches,
    lowpass: p.lowpass ? { frequency: p.lowpassFrequency, damping: p.lowpassDamping } : null,
  };
}

/** Delay of the filters well below their frequencies, s: the slope of their phase there. */
export function filterDelay({ notches, lowpass }: Filters): number {
  const lag = (damping: number, frequency: number) => (2 * damping) / (2 * Math.PI * frequency);
  return notches.reduce(
    (sum, { frequency, width, depth }) => sum + lag(width * (1 - depth), frequency),
    lowpass ? lag(lowpass.damping, lowpass.frequency) : 0,
  );
}

export function filterChanges({ notches: [first, second], lowpass }: Filters): ParameterChanges {
  return {
    notch1: first !== undefined,
    ...(first && {
      notch1Frequency: rounded('notch1Frequency', first.frequency),
      notch1Width: rounded('notch1Width', first.width),
      notch1Depth: rounded('notch1Depth', first.depth),
    }),
    notch2: second !== undefined,
    ...(second && {
      notch2Frequency: rounded('notch2Frequency', second.frequency),
      notch2Width: rounded('notch2Width', second.width),
      notch2Depth: rounded('notch2Depth', second.depth),
    }),
    lowpass: lowpass !== null,
    ...(lowpass && {
      lowpassFrequency: rounded('lowpassFrequency', lowpass.frequency),
      lowpassDamping: rounded('lowpassDamping', lowpass.damping),
    }),
  };
}

/** Everything of a shape but its gains, as parameters. */
export function shapeChanges(p: Parameters, shape: Shape): ParameterChanges {
  const { derivativeTime, observerBandwidth } = shape;
  return {
    ...filterChanges(shape),
    derivativeTime: rounded('derivativeTime', derivativeTime),
    ...(observerBandwidth !== null && {
      observerBandwidth: rounded('observerBandwidth', observerBandwidth),
      observerMass: rounded('observerMass', movedMass(p)),
    }),
  };
}

/**
 * Gains of a shape, in the structure of the drive, for the crossover that a rigid mass M would have, rad/s:
 *
 *     C(jω) = Kvel (jω + ω_i)(jω + ω_l)/(jω),   |C(jω_c)| = M ω_c
 *
 * hence Kvel = M ω_c/√((1 + (ω_i/ω_c)²)(1 + (ω_l/ω_c)²)).
 */
export function shapeGains(
  p: Parameters,
  { integratorCorner, leadCorner }: Pick<Shape, 'integratorCorner' | 'leadCorner'>,
  crossover: number,
): ParameterChanges {
  const mass = movedMass(p);
  return gainChanges(p.controller, {
    positionGain: leadCorner * crossover,
    velocityGain: (mass * crossover) / (Math.hypot(1, integratorCorner) * Math.hypot(1, leadCorner)),
    resetTime: 1 / (integratorCorner * crossover),
  });
}
