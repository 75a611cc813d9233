import { gainChanges } from '../../shared/axis/loop/loopGains.ts';
import { rounded } from '../../shared/axis/loop/tunedValue.ts';
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

/** The filters that pretuning sets: notches in the first two, a low-pass in the third. The fourth stays what it is. */
const DESIGNED = [1, 2, 3] as const;

/** Notches and low-pass of a scene as set. */
export function filtersOf(p: Parameters): Filters {
  const of = (type: Parameters['filter1']) => DESIGNED.filter((n) => p[`filter${n}`] === type);
  const [corner] = of('low-pass');
  return {
    notches: of('notch')
      .slice(0, 2)
      .map((n) => ({
        frequency: p[`filter${n}Frequency`],
        width: p[`filter${n}Damping`],
        depth: p[`filter${n}Depth`],
      })),
    lowpass: corner
      ? { frequency: p[`filter${corner}Frequency`], damping: p[`filter${corner}Damping`] }
      : null,
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
    filter1: first ? 'notch' : 'off',
    ...(first && {
      filter1Frequency: rounded('filter1Frequency', first.frequency),
      filter1Damping: rounded('filter1Damping', first.width),
      filter1Depth: rounded('filter1Depth', first.depth),
    }),
    filter2: second ? 'notch' : 'off',
    ...(second && {
      filter2Frequency: rounded('filter2Frequency', second.frequency),
      filter2Damping: rounded('filter2Damping', second.width),
      filter2Depth: rounded('filter2Depth', second.depth),
    }),
    filter3: lowpass ? 'low-pass' : 'off',
    ...(lowpass && {
      filter3Frequency: rounded('filter3Frequency', lowpass.frequency),
      filter3Damping: rounded('filter3Damping', lowpass.damping),
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
