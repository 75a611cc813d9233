import type { ParameterChanges, Parameters } from '../../core/parameters/table.ts';
import { type Cascade, cascadeOf, parallelGainsOf } from './cascade.ts';
import { rounded, TUNED_DIGITS, within } from './tunedValue.ts';

/** The gains of the feedback in each structure, in the order in which they are read. */
export const GAIN_NAMES = {
  PID: ['Kp', 'Ki', 'Kd'],
  cascade: ['positionLoopGain', 'velocityGain', 'resetTime'],
} as const satisfies Record<Parameters['controller'], readonly (keyof Parameters)[]>;

/** What only one structure of the loop has, beside its gains. */
const CASCADE_ONLY: readonly (keyof Parameters)[] = [
  ...GAIN_NAMES.cascade,
  'velocityCommandFilter',
  'velocityCommandLimit',
  'velocityFeedforward',
];
const PID_ONLY: readonly (keyof Parameters)[] = GAIN_NAMES.PID;
const OBSERVER_ONLY: readonly (keyof Parameters)[] = ['observerBandwidth', 'observerMass'];

/** Whether a parameter has a part in the structure of the loop that is chosen. */
export function isInStructure(
  name: keyof Parameters,
  p: Pick<Parameters, 'controller' | 'observer'>,
): boolean {
  if (CASCADE_ONLY.includes(name)) return p.controller === 'cascade';
  if (PID_ONLY.includes(name)) return p.controller === 'PID';
  return !OBSERVER_ONLY.includes(name) || p.observer;
}

/** The gains of a structure that make it this cascade, rounded. A PID stays one that has a cascade form. */
export function gainChanges(controller: Parameters['controller'], cascade: Cascade): ParameterChanges {
  if (controller === 'cascade') return cascadeGains(cascade, rounded);
  const { Kp, Ki, Kd } = parallelGainsOf(cascade);
  const [p, d] = [rounded('Kp', Kp), rounded('Kd', Kd)];
  return { Kp: p, Ki: Math.min(rounded('Ki', Ki), highestIntegralGain(p, d)), Kd: d };
}

/**
 * The present feedback in another structure, as exactly as it has one: the integral gain of a PID without a cascade form is lowered
 * to the highest that has one.
 */
export function gainsInStructure(p: Parameters, controller: Parameters['controller']): ParameterChanges {
  if (controller === p.controller) return {};
  if (controller === 'PID') {
    const { Kp, Ki, Kd } = parallelGainsOf({
      positionGain: p.positionLoopGain,
      velocityGain: p.velocityGain,
      resetTime: p.resetTime === 0 ? Number.POSITIVE_INFINITY : p.resetTime,
    });
    return { controller, Kp: within('Kp', Kp), Ki: within('Ki', Ki), Kd: within('Kd', Kd) };
  }
  const cascade = cascadeOf({ ...p, Ki: Math.min(p.Ki, highestIntegralGain(p.Kp, p.Kd)) });
  // Without damping gain there is no speed loop to take over: the gains of the cascade stay what they are.
  return { controller, ...(typeof cascade === 'string' ? {} : cascadeGains(cascade, within)) };
}

function cascadeGains(
  { positionGain, velocityGain, resetTime }: Cascade,
  legal: typeof within,
): ParameterChanges {
  return {
    positionLoopGain: legal('positionLoopGain', positionGain),
    velocityGain: legal('velocityGain', velocityGain),
    resetTime: Number.isFinite(resetTime) ? legal('resetTime', resetTime) : 0,
  };
}

/** The highest Ki with a cascade form, Kp²/(4 Kd), rounded down. */
function highestIntegralGain(Kp: number, Kd: number): number {
  const highest = Kp ** 2 / (4 * Kd);
  if (highest === 0 || !Number.isFinite(highest)) return highest === 0 ? 0 : Number.POSITIVE_INFINITY;
  const digit = 10 ** (Math.floor(Math.log10(highest)) + 1 - TUNED_DIGITS);
  return within('Ki', Math.floor(highest / digit) * digit);
}
