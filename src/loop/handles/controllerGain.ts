import { type FeedbackGains, feedbackWeights } from '../../../shared/axis/loop/feedback.ts';
import { positionRate } from '../../../shared/core/crossChecks.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';

export type ControllerGains = FeedbackGains & Pick<Parameters, 'derivativeTime'>;

/**
 * |C| of the sampled position controller without filters and observer, N/m, at a frequency (Hz) up to half the rate of the position
 * loop, for one encoder:
 *
 *     C(z) = a + b J + (c + d J) (w/Tp)(1 − z⁻¹)/(1 − (1 − w) z⁻¹),   J = Tp/(1 − z⁻¹),   w = Tp/(T_f + Tp),   z = exp(jωTp)
 *
 * with the weights of shared/axis/loop/feedback.ts, which is the control law of the position loop at a standing setpoint.
 */
export function controllerGain(gains: ControllerGains, p: Parameters, frequency: number): number {
  const { error, errorIntegral, speed, speedIntegral } = feedbackWeights(gains);
  const period = 1 / positionRate(p);
  const angle = 2 * Math.PI * frequency * period;
  const difference = { re: 1 - Math.cos(angle), im: Math.sin(angle) };
  const square = difference.re ** 2 + difference.im ** 2;
  const held = gains.derivativeTime / (gains.derivativeTime + period);
  const filter = { re: 1 - held * Math.cos(angle), im: held * Math.sin(angle) };
  const sum = (errorIntegral * period) / square;
  const behind = (1 - held) / (filter.re ** 2 + filter.im ** 2);
  // J times the difference is Tp: what is left of the integral of the speed is the filter.
  const derivative = (speed / period) * behind;
  const summed = speedIntegral * behind;
  return Math.hypot(
    error +
      sum * difference.re +
      derivative * (difference.re * filter.re + difference.im * filter.im) +
      summed * filter.re,
    -sum * difference.im +
      derivative * (difference.im * filter.re - difference.re * filter.im) -
      summed * filter.im,
  );
}
