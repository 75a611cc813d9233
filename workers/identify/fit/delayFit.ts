import { motorConstants } from '../../../shared/axis/motor.ts';
import { valueAt } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { rms } from '../../math/statistics.ts';
import { jackknife, scatter } from './jackknife.ts';
import { forceFactor } from './motorForce.ts';
import { Windows } from './windows.ts';

const HALF = 0.01;
const FEWEST_SAMPLES = 10;
const FEWEST_WINDOWS = 60;
/** The command has to change by this much of itself within a window, or its delay does not show. */
const MIN_CHANGE = 1e-3;

export interface DelayFit {
  /** s */
  readonly delay: number;
  readonly scatter: number;
  /** Half-width of what the back-EMF adds. */
  readonly tolerance: number;
}

/*
 * A linear current loop answers a slow command i* with
 *
 *   i = g (i* − T i*' + ½ T₂ i*'' − …)
 *
 * whatever is inside it: T is its delay for slow signals, the first moment of its impulse response.
 * Three derivatives are fitted, by averages over windows (see windows.ts), so T is the delay and
 * not a mixture with the curvature. The command stands on the right: it is known exactly.
 *
 * The back-EMF pushes the current as well. A feedforward takes it off, but late by T_v, the age of
 * its speed; so K_e T_v a is left over, which the integrator of the current loop answers with a
 * current that lags by K_e T_v a'/Ki. In a move that looks like delay: T is less it, by the
 * parameters. It is allowed for either way, and at standstill too, where the guide holds the table
 * against part of the force.
 */
export function fitDelay(
  command: Float64Array,
  current: Float64Array,
  period: number,
  mass: number,
  moves: boolean,
  p: Parameters,
): DelayFit | string {
  const windows = new Windows(period, command.length, Math.max(HALF, FEWEST_SAMPLES * period));
  const commanded = windows.average(command);
  const answer = windows.average(current);
  const whole = (column: Float64Array) =>
    column.filter((_, k) => !Number.isNaN(valueAt(commanded, k) + valueAt(answer, k)));
  const derivative = (order: number) => whole(windows.average(command, order));
  const [level, first, second, third] = [whole(commanded), derivative(1), derivative(2), derivative(3)];
  const right = whole(answer);
  if (right.length < FEWEST_WINDOWS) return 'The trace is too short to tell the delay of the current.';
  if (rms(first) * windows.half * period < MIN_CHANGE * rms(level)) {
    return 'The current command hardly changes, so its delay does not show.';
  }
  const one = new Float64Array(right.length).fill(1);
  const fit = jackknife([level, first, second, third, one], right, windows.overlap);
  const delay = (x: Float64Array) => -valueAt(x, 1) / valueAt(x, 0);
  const emf = emfDelay(mass, p);
  return { delay: delay(fit.x) - (moves ? emf : 0), scatter: scatter(fit, delay), tolerance: emf };
}

/** K_e T_v (K/M)/Ki: see above. s */
function emfDelay(mass: number, p: Parameters): number {
  const motor = motorConstants(p);
  const factor = forceFactor(p);
  const emfPerSpeed = (factor * motor.forcePerAmp) / 1.5;
  const accelerationPerAmp = (factor * motor.forcePerAmp) / mass;
  const age = p.derivativeTime + (p.positionDivider / 2 + 1.5) / p.currentRate;
  const integral = (2 * Math.PI * p.currentBandwidth * motor.resistance) / p.motorCount;
  return (emfPerSpeed * age * accelerationPerAmp) / integral;
}
