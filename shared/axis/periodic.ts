import type { Parameters } from '../core/parameters/table.ts';
import { ironFactor } from './field.ts';
import { motorConstants } from './motor.ts';

/*
 * What repeats along the axis:
 *
 *   cogging        F_cog  = N (B/B0)² Σ A_k sin(2πx/λ_k + φ_k)                          x: motor side
 *   force ripple   ψ/ψ0   = 1 + Σ r_n cos(nπx/τ + φ_n),  n = 6, 12                      x: motor side
 *   interpolation  x_m − u = Σ a_n sin(2πnu/p),  n = 1, 2                               u: position at the encoder
 *   scale or lead  x_m − u = a_l sin(2πu/λ_l) + a_h sin(2πu/p_h),  the second on a motor with a screw alone
 *
 * m, N. Two pole pitches τ are one period of the field.
 */

interface PeriodicTerm {
  readonly amplitude: number;
  /** m */
  readonly period: number;
}

interface CoggingTerm extends PeriodicTerm {
  readonly phase: number;
}

/** Terms of the cogging of all motors that are not 0; amplitudes in N. */
export function coggingTerms(p: Parameters): CoggingTerm[] {
  const scale = p.motorCount * ironFactor(p);
  const terms = [
    { amplitude: scale * p.cogging1, period: p.cogging1Period, phase: p.cogging1Phase },
    { amplitude: scale * p.cogging2, period: p.cogging2Period, phase: p.cogging2Phase },
    { amplitude: scale * p.cogging3, period: p.cogging3Period, phase: p.cogging3Phase },
  ];
  return terms.filter(({ amplitude }) => amplitude !== 0);
}

interface RippleTerm extends PeriodicTerm {
  /** n: periods per two pole pitches. */
  readonly order: number;
  readonly phase: number;
}

/** Both orders of the force ripple, whether 0 or not; amplitudes as shares of the flux. */
export function rippleTerms(p: Parameters): readonly [RippleTerm, RippleTerm] {
  const { polePitch } = motorConstants(p);
  return [
    { order: 6, amplitude: p.ripple6, phase: p.ripple6Phase, period: polePitch / 3 },
    { order: 12, amplitude: p.ripple12, phase: p.ripple12Phase, period: polePitch / 6 },
  ];
}

/** Both terms of the encoder's interpolation error, whether 0 or not; amplitudes in m. */
export function interpolationTerms(p: Parameters): readonly [PeriodicTerm, PeriodicTerm] {
  return [
    { amplitude: p.interpolation1, period: p.signalPeriod },
    { amplitude: p.interpolation2, period: p.signalPeriod / 2 },
  ];
}

/**
 * What the scale itself is wrong by: over a long stretch, and once per revolution of a screw where the encoder is on its motor; whether 0
 * or not. Amplitudes in m.
 */
export function scaleErrorTerms(p: Parameters): readonly [PeriodicTerm, PeriodicTerm] {
  const seesScrew = p.encoderSide === 'motor' && p.lead > 0;
  return [
    { amplitude: p.longError, period: p.longErrorPeriod },
    { amplitude: seesScrew ? p.leadError : 0, period: seesScrew ? p.lead : p.longErrorPeriod },
  ];
}
