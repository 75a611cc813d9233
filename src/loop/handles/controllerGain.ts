import { positionRate } from '../../../shared/core/crossChecks.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';

export type ControllerGains = Pick<Parameters, 'Kp' | 'Ki' | 'Kd' | 'derivativeTime'>;

/**
 * |C| of the sampled position controller without its filters, N/m, at a frequency (Hz) up to half the rate of the position loop:
 *
 *     C(z) = Kp + Ki Tp/(1 − z⁻¹) + Kd (a/Tp)(1 − z⁻¹)/(1 − (1 − a) z⁻¹),   a = Tp/(T_f + Tp),   z = exp(jωTp)
 *
 * which is the control law of the position loop (backward Euler) at a standing setpoint.
 */
export function controllerGain(
  { Kp, Ki, Kd, derivativeTime }: ControllerGains,
  p: Parameters,
  frequency: number,
): number {
  const period = 1 / positionRate(p);
  const angle = 2 * Math.PI * frequency * period;
  const difference = { re: 1 - Math.cos(angle), im: Math.sin(angle) };
  const square = difference.re ** 2 + difference.im ** 2;
  const integral = (Ki * period) / square;
  const held = derivativeTime / (derivativeTime + period);
  const filter = { re: 1 - held * Math.cos(angle), im: held * Math.sin(angle) };
  const derivative = (Kd * (1 - held)) / period / (filter.re ** 2 + filter.im ** 2);
  return Math.hypot(
    Kp + integral * difference.re + derivative * (difference.re * filter.re + difference.im * filter.im),
    -integral * difference.im + derivative * (difference.im * filter.re - difference.re * filter.im),
  );
}
