import type { ParameterChanges, Parameters } from '../core/parameters/table.ts';
import { parallelGainsOf } from './cascade.ts';
import { viscousDrag } from './drag.ts';
import { holdingForce } from './gravity.ts';
import { movedMass } from './motor.ts';
import { rounded, within } from './tunedValue.ts';

/** Corners of the loop as shares of its crossover: integrator, lead, and filter of the measured speed. */
const INTEGRATOR_CORNER = 1 / 10;
const LEAD_CORNER = 1 / 3;
const FILTER_CORNER = 8;

export type StartGain =
  | 'Kp'
  | 'Ki'
  | 'Kd'
  | 'derivativeTime'
  | 'accelerationFeedforward'
  | 'speedFeedforward'
  | 'forceBias';

/** Gains to start tuning from: those below, legal and rounded to what a person can read. */
export function startGains(p: Parameters, crossover: number): ParameterChanges {
  const exact = Object.entries(exactGains(p, crossover)) as [StartGain, number][];
  return Object.fromEntries(exact.map(([name, value]) => [name, rounded(name, value)]));
}

/**
 * The gains for the moved mass M taken as rigid and a wanted crossover f_c (Hz) of the position loop.
 *
 *     C(s) = Kp + Ki/s + Kd s/(T_f s + 1)      |C(j2πf_c)| = M (2πf_c)²
 *     1/Tn = 2πf_c/10    Kv = 2πf_c/3    T_f = 1/(2π·8 f_c)
 *
 * in the words of the equivalent cascade: velocity gain Kvel, position gain Kv, reset time Tn, with Kd = Kvel,
 * Kp = Kvel (Kv + 1/Tn), Ki = Kvel Kv/Tn. Leaves just under 60° of phase margin for delay and resonances to use up.
 * Feedforward takes mass and viscous drag; the bias holds gravity less the counterbalance.
 * Source: loop shaping of a double integrator, e.g. Steinbuch, Norg, Advanced motion control: an industrial perspective,
 * European Journal of Control 4(4), 1998 (from memory).
 *
 * @throws RangeError if the crossover is not a positive number.
 */
export function exactGains(p: Parameters, crossover: number): Record<StartGain, number> {
  if (!(crossover > 0 && crossover < Infinity)) {
    throw new RangeError(`crossover is ${crossover} Hz; it must be a positive number of hertz.`);
  }
  const mass = movedMass(p);
  const omega = 2 * Math.PI * crossover;
  const derivativeTime = within('derivativeTime', 1 / (FILTER_CORNER * omega));
  const unit = parallelGainsOf({
    positionGain: LEAD_CORNER * omega,
    velocityGain: 1,
    resetTime: 1 / (INTEGRATOR_CORNER * omega),
  });
  const filter = 1 + (derivativeTime * omega) ** 2;
  const real = unit.Kp + (unit.Kd * derivativeTime * omega ** 2) / filter;
  const imaginary = (unit.Kd * omega) / filter - unit.Ki / omega;
  const velocityGain = (mass * omega ** 2) / Math.hypot(real, imaginary);
  return {
    Kp: velocityGain * unit.Kp,
    Ki: velocityGain * unit.Ki,
    Kd: velocityGain * unit.Kd,
    derivativeTime,
    accelerationFeedforward: mass,
    speedFeedforward: viscousDrag(p),
    forceBias: holdingForce(p),
  };
}
