import { GAIN_NAMES } from '../../../shared/axis/loop/loopGains.ts';
import { within } from '../../../shared/axis/loop/tunedValue.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import { placeOn, power } from '../../plot/interpolate.ts';
import { type ControllerGains, controllerGain } from './controllerGain.ts';

/** An open loop over frequency: Hz, and |L|. */
export interface LoopGain {
  readonly frequency: Float64Array;
  readonly magnitude: Float64Array;
}

/** Gains are set to this many digits: one count is far below what a plot can show. */
const DIGITS = 4;
/** Farthest that one drag goes, as a factor on the corner frequencies of the controller. */
const FARTHEST = 1000;
/** Halvings of the logarithm: to 1e-9 of the answer. */
const HALVINGS = 40;

/**
 * All corner frequencies of the controller moved by the factor r, and its gain with them as a mass asks for it:
 *
 *     Kp ∝ r²    Ki ∝ r³    Kd ∝ r    Kv ∝ r    Kvel ∝ r    T_n ∝ 1/r    T_f ∝ 1/r
 *
 * so that C(r·f) = r² C(f) of the continuous controller: on a mass, the whole loop moves along the frequency axis and keeps its shape.
 * Source: scaling s in C(s)/(M s²).
 */
export function movedGains(gains: ControllerGains, r: number): ControllerGains {
  return {
    controller: gains.controller,
    Kp: gains.Kp * r ** 2,
    Ki: gains.Ki * r ** 3,
    Kd: gains.Kd * r,
    positionLoopGain: gains.positionLoopGain * r,
    velocityGain: gains.velocityGain * r,
    resetTime: gains.resetTime / r,
    derivativeTime: gains.derivativeTime / r,
  };
}

/**
 * The gains that make |L| = 1 at `target` (Hz), from the loop as it was analysed with `p`: all corners move together. The axis need not
 * be a mere mass: what of |L| is not the controller's stays as it is. Null if that would take more than a factor of 1000.
 */
export function gainsForCrossover(
  p: Parameters,
  { frequency, magnitude }: LoopGain,
  target: number,
): ParameterChanges | null {
  const plant = power(magnitude, placeOn(frequency, target)) / controllerGain(p, p, target);
  const tooSmall = (r: number) => plant * controllerGain(movedGains(p, r), p, target) < 1;
  let [low, high] = [1 / FARTHEST, FARTHEST];
  if (!tooSmall(low) || tooSmall(high)) return null;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = Math.sqrt(low * high);
    if (tooSmall(middle)) low = middle;
    else high = middle;
  }
  return rounded(movedGains(p, Math.sqrt(low * high)));
}

/** The gains of the structure that is in use, and the speed filter. */
function rounded(gains: ControllerGains): ParameterChanges {
  const names = [...GAIN_NAMES[gains.controller], 'derivativeTime'] as const;
  return Object.fromEntries(names.map((name) => [name, legal(name, gains[name])]));
}

function legal(name: Exclude<keyof ControllerGains, 'controller'>, value: number): number {
  const digits = Number(value.toPrecision(DIGITS));
  // A time must not be what ends the drag: it stays at the end of its range.
  return name === 'derivativeTime' || name === 'resetTime'
    ? value === 0
      ? 0
      : within(name, digits)
    : digits;
}
