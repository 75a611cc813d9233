import { motorConstants } from '../../shared/axis/motor.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { Matrix } from '../math/matrix.ts';
import { zeroOrderHold } from '../math/zeroOrderHold.ts';
import type { LinearPlant } from './linearise.ts';
import { combine, type Signal, single, widened } from './signal.ts';

/** Plant, current loop and speed estimate over one position-loop sample: s⁺ = A s + b i* + Σ e_m f_m. */
export interface DrivenAxis {
  readonly a: Matrix;
  /** Effect of the current command, held for the sample, A. */
  readonly command: Matrix;
  /** One column per current-loop period of the sample: effect of the force on the table in it, N. */
  readonly force: Matrix;
  /** Signals of s at the sampling instant: encoder reading, the speed estimate made from it, table position. */
  readonly reading: Signal;
  readonly speedEstimate: Signal;
  readonly table: Signal;
}

/*
 * The timing rule of axis.ts as linear maps. s holds the plant, I_d, I_q, the voltages worked out in the last period (which act
 * in this one), the speed estimate and the last reading. Over one current period Ts:
 *
 *   plant⁺ = Φ plant + Γ (w_d, w_q, f)                                 exact under held voltages
 *   v̂⁺ = v̂ + Tp/(T_f + Tp) ((x_m − x_m,last)/Tp − v̂)                    at a position sample, else v̂
 *   I_d⁺ = I_d − Ki Ts i_d        w_d⁺ = −Kp i_d + I_d⁺ − (π/τ)(L/N)(v0 i_q + i_q0 v̂⁺)
 *   I_q⁺ = I_q + Ki Ts (i* − i_q)    w_q⁺ = Kp (i* − i_q) + I_q⁺ + (π/τ)(L/N)(v0 i_d + i_d0 v̂⁺) + (π/τ) ψ20 v̂⁺
 *
 * the laws of control/currentLoop.ts about the held currents i_d0, i_q0 and the speed v0. A position sample is one period with a
 * reading and n_p − 1 without.
 */
export function drivenAxis(p: Parameters, plant: LinearPlant): DrivenAxis {
  const ts = 1 / p.currentRate;
  const n = plant.a.rows;
  const states = n + 6;
  const { phi, gamma } = zeroOrderHold(plant.a, plant.b, ts);

  const width = states + 2;
  const [integralD, integralQ, waitingD, waitingQ, speed, last, command, force] = Array.from(
    { length: 8 },
    (_, k) => single(n + k, width),
  ) as [Signal, Signal, Signal, Signal, Signal, Signal, Signal, Signal];
  const reading = widened(plant.reading, width);
  const currentD = widened(plant.currentD, width);
  const currentQ = widened(plant.currentQ, width);
  const tp = p.positionDivider * ts;
  const weight = tp / (p.derivativeTime + tp);
  const estimate = combine([1 - weight, speed], [weight / tp, reading], [-weight / tp, last]);

  const motor = motorConstants(p);
  const bandwidth = 2 * Math.PI * p.currentBandwidth;
  const inductance = motor.inductance / p.motorCount;
  const gain = bandwidth * inductance;
  const integralGain = (bandwidth * motor.resistance * ts) / p.motorCount;
  const perPitch = Math.PI / motor.polePitch;
  const turning = perPitch * inductance;

  /** One current period, [A | b_command b_force]. */
  const period = (sampled: boolean): Matrix => {
    const speedNow = sampled ? estimate : speed;
    const errorQ = combine([1, command], [-1, currentQ]);
    const newD = combine([1, integralD], [-integralGain, currentD]);
    const newQ = combine([1, integralQ], [integralGain, errorQ]);
    const voltageD = combine(
      [-gain, currentD],
      [1, newD],
      [-turning * plant.speed, currentQ],
      [-turning * plant.heldCurrentQ, speedNow],
    );
    const voltageQ = combine(
      [gain, errorQ],
      [1, newQ],
      [turning * plant.speed, currentD],
      [turning * plant.heldCurrentD + perPitch * motor.flux, speedNow],
    );
    const map = new Matrix(states, width);
    for (let i = 0; i < n; i++) {
      const next = combine(
        [1, widened(phi.row(i), width)],
        [gamma.get(i, 0), waitingD],
        [gamma.get(i, 1), waitingQ],
        [gamma.get(i, 2), force],
      );
      map.row(i).set(next);
    }
    [newD, newQ, voltageD, voltageQ, speedNow, sampled ? reading : last].forEach((signal, k) => {
      map.row(n + k).set(signal);
    });
    return map;
  };

  let a = Matrix.identity(states);
  let commanded = new Matrix(states, 1);
  let forced = new Matrix(states, p.positionDivider);
  const [first, other] = [period(true), period(false)];
  for (let m = 0; m < p.positionDivider; m++) {
    const map = m === 0 ? first : other;
    const step = map.block(0, 0, states, states);
    a = step.times(a);
    commanded = step.times(commanded);
    forced = step.times(forced);
    for (let i = 0; i < states; i++) {
      commanded.add(i, 0, map.get(i, states));
      forced.add(i, m, map.get(i, states + 1));
    }
  }
  return {
    a,
    command: commanded,
    force: forced,
    reading: reading.slice(0, states),
    speedEstimate: estimate.slice(0, states),
    table: widened(plant.table, states),
  };
}
