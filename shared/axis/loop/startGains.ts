import { movedMass } from '../../core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../../core/parameters/table.ts';
import { viscousDrag } from '../drag.ts';
import { holdingForce } from '../gravity.ts';
import { type Cascade, parallelGainsOf } from './cascade.ts';
import { gainChanges } from './loopGains.ts';
import { rounded, within } from './tunedValue.ts';

/** Corners of the loop as shares of its crossover: integrator, lead, and filter of the measured speed. */
const INTEGRATOR_CORNER = 1 / 10;
const LEAD_CORNER = 1 / 3;
const FILTER_CORNER = 8;

/** Gains to start tuning from, in the structure chosen: those below, legal and rounded to what a person can read. */
export function startGains(p: Parameters, crossover: number): ParameterChanges {
  const { cascade, derivativeTime } = startLoop(p, crossover);
  return {
    ...gainChanges(p.controller, cascade),
    derivativeTime: rounded('derivativeTime', derivativeTime),
    accelerationFeedforward: rounded('accelerationFeedforward', movedMass(p)),
    speedFeedforward: rounded('speedFeedforward', viscousDrag(p)),
    forceBias: rounded('forceBias', holdingForce(p)),
  };
}

/**
 * The loop for the moved mass M taken as rigid and a wanted crossover f_c (Hz) of the position loop, before it is rounded.
 *
 *     C(s) = Kp + Ki/s + Kd s/(T_f s + 1)      |C(j2πf_c)| = M (2πf_c)²
 *     1/Tn = 2πf_c/10    Kv = 2πf_c/3    T_f = 1/(2π·8 f_c)
 *
 * as a cascade: velocity gain Kvel, position gain Kv, reset time Tn, with Kd = Kvel, Kp = Kvel (Kv + 1/Tn), Ki = Kvel Kv/Tn.
 * Leaves just under 60° of phase margin for delay and resonances to use up. Feedforward takes mass and viscous drag; the bias
 * holds gravity less the counterbalance.
 * Source: loop shaping of a double integrator, e.g. Steinbuch, Norg, Advanced motion control: an industrial perspective,
 * European Journal of Control 4(4), 1998 (from memory).
 *
 * @throws RangeError if the crossover is not a positive number.
 */
export function startLoop(
  p: Parameters,
  crossover: number,
): { readonly cascade: Cascade; readonly derivativeTime: number } {
  if (!(crossover > 0 && crossover < Infinity)) {
    throw new RangeError(`crossover is ${crossover} Hz; it must be a positive number of hertz.`);
  }
  const omega = 2 * Math.PI * crossover;
  const derivativeTime = within('derivativeTime', 1 / (FILTER_CORNER * omega));
  const [positionGain, resetTime] = [LEAD_CORNER * omega, 1 / (INTEGRATOR_CORNER * omega)];
  const { Kp, Ki } = parallelGainsOf({ positionGain, resetTime, velocityGain: 1 });
  const filter = 1 + (derivativeTime * omega) ** 2;
  const real = Kp + (derivativeTime * omega ** 2) / filter;
  const imaginary = omega / filter - Ki / omega;
  const velocityGain = (movedMass(p) * omega ** 2) / Math.hypot(real, imaginary);
  return { cascade: { positionGain, velocityGain, resetTime }, derivativeTime };
}
