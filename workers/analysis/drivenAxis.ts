import { motorConstants } from '../../shared/axis/motor.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { Matrix } from '../math/matrix.ts';
import { zeroOrderHold } from '../math/zeroOrderHold.ts';
import type { LinearPlant } from './linearise.ts';
import { combine, type Signal, single, widened } from './signal.ts';

/**
 * Plant, current loop and speed estimate over one position-loop sample:
 *
 *   s⁺ = A s + b i* + Σ e_m f_m
 */
export interface DrivenAxis {
  readonly a: Matrix;
  /** Effect of the current command, held for the sample, A. */
  readonly command: Matrix;
  /**
   * One column per current-loop period of the sample: effect of the force on the table in that
   * period, N.
   */
  readonly force: Matrix;
  /**
   * Signals of s at the sampling instant: reading of the position encoder and of the one that the
   * speed is measured from, the speed estimate, table position.
   */
  readonly reading: Signal;
  readonly speedReading: Signal;
  readonly speedEstimate: Signal;
  readonly table: Signal;
}

/**
 * States of the controller: I_d, I_q, w_d, w_q, speed estimate, last reading; then two inputs:
 * current command and force.
 */
const STATES_BEHIND_PLANT = 6;
const INPUTS = 2;

/** States and inputs of one current period, and the signals formed from them. */
interface Signals {
  readonly integralD: Signal;
  readonly integralQ: Signal;
  readonly waitingD: Signal;
  readonly waitingQ: Signal;
  readonly speed: Signal;
  readonly last: Signal;
  readonly command: Signal;
  readonly force: Signal;
  readonly reading: Signal;
  readonly speedReading: Signal;
  readonly currentD: Signal;
  readonly currentQ: Signal;
  /** The speed estimate made from a new reading. */
  readonly estimate: Signal;
}

/*
 * The timing rule of axis.ts as linear maps. s holds the plant, I_d, I_q, the voltages computed in
 * the last period (which act in this one), the speed estimate and the last reading. Over one
 * current period Ts:
 *
 *   plant⁺ = Φ plant + Γ (w_d, w_q, f)                                 exact under held voltages
 *   v̂⁺ = v̂ + Tp/(T_f + Tp) ((x_s − x_s,last)/Tp − v̂)                    at a position sample, else v̂
 *   I_d⁺ = I_d − Ki Ts i_d        w_d⁺ = −Kp i_d + I_d⁺ − (π/τ)(L/N)(v0 i_q + i_q0 v̂⁺)
 *   I_q⁺ = I_q + Ki Ts (i* − i_q)    w_q⁺ = Kp (i* − i_q) + I_q⁺ + (π/τ)(L/N)(v0 i_d + i_d0 v̂⁺) + (π/τ) ψ20 v̂⁺
 *
 * the laws of control/currentLoop.ts about the held currents i_d0, i_q0 and the speed v0. A
 * position sample is one period with a reading and n_p − 1 without.
 */
export function drivenAxis(p: Parameters, plant: LinearPlant): DrivenAxis {
  const signals = signalsOf(p, plant);
  const states = plant.a.rows + STATES_BEHIND_PLANT;
  const moved = plantPeriod(p, plant, signals);
  const sampled = periodMap(
    moved,
    controllerPeriod(p, plant, signals, signals.estimate, signals.speedReading),
  );
  const between = periodMap(moved, controllerPeriod(p, plant, signals, signals.speed, signals.last));

  let a = Matrix.identity(states);
  let command = new Matrix(states, 1);
  let force = new Matrix(states, p.positionDivider);
  for (let m = 0; m < p.positionDivider; m++) {
    const map = m === 0 ? sampled : between;
    const step = map.block(0, 0, states, states);
    a = step.times(a);
    command = step.times(command);
    force = step.times(force);
    for (let i = 0; i < states; i++) {
      command.add(i, 0, map.get(i, states));
      force.add(i, m, map.get(i, states + 1));
    }
  }
  return {
    a,
    command,
    force,
    reading: signals.reading.slice(0, states),
    speedReading: signals.speedReading.slice(0, states),
    speedEstimate: signals.estimate.slice(0, states),
    table: widened(plant.table, states),
  };
}

function signalsOf(p: Parameters, plant: LinearPlant): Signals {
  const n = plant.a.rows;
  const width = n + STATES_BEHIND_PLANT + INPUTS;
  const speed = single(n + 4, width);
  const last = single(n + 5, width);
  const speedReading = widened(plant.speedReading, width);
  const tp = p.positionDivider * (1 / p.currentRate);
  const weight = tp / (p.derivativeTime + tp);
  return {
    integralD: single(n, width),
    integralQ: single(n + 1, width),
    waitingD: single(n + 2, width),
    waitingQ: single(n + 3, width),
    speed,
    last,
    command: single(n + 6, width),
    force: single(n + 7, width),
    reading: widened(plant.reading, width),
    speedReading,
    currentD: widened(plant.currentD, width),
    currentQ: widened(plant.currentQ, width),
    estimate: combine([1 - weight, speed], [weight / tp, speedReading], [-weight / tp, last]),
  };
}

/** The states of the plant after one current period. */
function plantPeriod(
  p: Parameters,
  plant: LinearPlant,
  { waitingD, waitingQ, force, command }: Signals,
): Signal[] {
  const { phi, gamma } = zeroOrderHold(plant.a, plant.b, 1 / p.currentRate);
  return Array.from({ length: phi.rows }, (_, i) =>
    combine(
      [1, widened(phi.row(i), command.length)],
      [gamma.get(i, 0), waitingD],
      [gamma.get(i, 1), waitingQ],
      [gamma.get(i, 2), force],
    ),
  );
}

/**
 * The states of the controller after one current period, with the speed estimate and the reading
 * that it uses.
 */
function controllerPeriod(
  p: Parameters,
  plant: LinearPlant,
  { integralD, integralQ, command, currentD, currentQ }: Signals,
  speed: Signal,
  reading: Signal,
): Signal[] {
  const motor = motorConstants(p);
  const bandwidth = 2 * Math.PI * p.currentBandwidth;
  const inductance = motor.inductance / p.motorCount;
  const gain = bandwidth * inductance;
  const integralGain = (bandwidth * motor.resistance * (1 / p.currentRate)) / p.motorCount;
  const perPitch = Math.PI / motor.polePitch;
  const turning = perPitch * inductance;

  const errorQ = combine([1, command], [-1, currentQ]);
  const newD = combine([1, integralD], [-integralGain, currentD]);
  const newQ = combine([1, integralQ], [integralGain, errorQ]);
  const voltageD = combine(
    [-gain, currentD],
    [1, newD],
    [-turning * plant.speed, currentQ],
    [-turning * plant.heldCurrentQ, speed],
  );
  const voltageQ = combine(
    [gain, errorQ],
    [1, newQ],
    [turning * plant.speed, currentD],
    [turning * plant.heldCurrentD + perPitch * motor.flux, speed],
  );
  return [newD, newQ, voltageD, voltageQ, speed, reading];
}

/** [A | b_command b_force] of one current period. */
function periodMap(plant: readonly Signal[], controller: readonly Signal[]): Matrix {
  return Matrix.of([...plant, ...controller].map((signal) => Array.from(signal)));
}
