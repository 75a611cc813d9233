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
/** The command must change by this share of itself within a window, or its delay does not show. */
const MIN_CHANGE = 1e-3;

interface DelayFit {
  /** s */
  readonly delay: number;
  readonly scatter: number;
  /** Half-width of the effect of the back-EMF. */
  readonly tolerance: number;
}

/*
 * A linear current loop responds to a slow command i* with
 *
 *   i = g (i* − T i*' + ½ T₂ i*'' − …)
 *
 * whatever is inside it: T is its delay for slow signals, the first moment of its impulse response.
 * Three derivatives are fitted, by averages over windows (see windows.ts), so T is the delay and
 * not mixed with the curvature. The command is on the right-hand side: it is known exactly.
 *
 * The back-EMF drives current as well. A feedforward compensates it, but late by T_v, the age of
 * its speed; so K_e T_v a remains, to which the integrator of the current loop responds with a
 * current that lags by K_e T_v a'/Ki. In a move that looks like delay: it is subtracted from T, as
 * the parameters give it. The tolerance allows for it either way, and at standstill too, where the
 * guide holds the table against part of the force.
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
