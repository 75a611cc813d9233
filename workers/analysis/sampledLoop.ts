import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { OperatingPoint } from '../../shared/protocol/analysis.ts';
import { type Complex, ONE, over, plus, times, unit } from '../math/complex.ts';
import type { ComplexArray } from '../math/complexArray.ts';
import { Matrix } from '../math/matrix.ts';
import { Transfer } from '../math/transfer.ts';
import { closedLoop } from './closedLoop.ts';
import { drivenAxis } from './drivenAxis.ts';
import { linearise } from './linearise.ts';
import { PositionController } from './positionController.ts';
import { widened } from './signal.ts';

/** The responses of a loop at one frequency. */
export interface LoopResponse {
  /** L, cut at the current command. */
  readonly openLoop: Complex;
  /** S = 1/(1 + L) */
  readonly sensitivity: Complex;
  /** T = L/(1 + L) */
  readonly closedLoop: Complex;
  /** Encoder reading over a sine setpoint, with the feedforward as set. */
  readonly tracking: Complex;
  /** Table position over the force on it, m/N. */
  readonly compliance: Complex;
}

/**
 * The position loop as it is sampled: exact, with both rates, the computing delay, the holds, the
 * filters and the current loop. Positions are those at the position-loop samples. A force on the
 * table is held over each current period, as in the simulation; compared with a true sine that is a
 * factor sin(x)/x, x = ωTs/2, and a delay of Ts/2.
 */
export class SampledLoop {
  /** Tp, s. */
  readonly period: number;
  /** Of the closed loop and of the axis without position loop, over one sample. */
  readonly eigenvalues: ComplexArray;
  readonly openPoles: ComplexArray;
  /** Amplitudes of current and voltage that hold the operating point, A, V. */
  readonly holdingCurrent: number;
  readonly holdingVoltage: number;

  readonly #controller: PositionController;
  readonly #plant: Transfer;
  /** Of the encoder that the speed is measured from, where it is another one. */
  readonly #speedPlant: Transfer;
  readonly #underForce: Transfer;
  readonly #currentPeriod: number;
  readonly #stiffAtRest: boolean;

  /**
   * @throws RangeError naming the value of the operating point that is out of range, with the
   * allowed range
   */
  constructor(p: Parameters, point: OperatingPoint) {
    const linear = linearise(p, point);
    const axis = drivenAxis(p, linear);
    this.#controller = new PositionController(p);
    this.period = this.#controller.period;
    this.#currentPeriod = 1 / p.currentRate;
    this.#plant = new Transfer(axis.a, axis.command, axis.reading);
    this.#speedPlant =
      p.speedSource === 'motor encoder' ? new Transfer(axis.a, axis.command, axis.speedReading) : this.#plant;
    const closed = closedLoop(axis, this.#controller);
    const force = new Matrix(closed.rows, axis.force.cols);
    force.place(axis.force, 0, 0);
    this.#underForce = new Transfer(closed, force, widened(axis.table, closed.rows));
    this.eigenvalues = this.#underForce.eigenvalues();
    this.openPoles = this.#plant.eigenvalues();
    this.holdingCurrent = Math.hypot(linear.heldCurrentD, linear.heldCurrentQ);
    this.holdingVoltage = Math.hypot(linear.voltageD, linear.voltageQ);
    const { errorIntegral } = this.#controller.weights;
    this.#stiffAtRest = (errorIntegral > 0 || p.observer) && p.encoderSide === 'load';
  }

  /** L at angular frequency ω, rad/s, above 0. */
  openLoop(omega: number): Complex {
    const z = unit(omega * this.period);
    return this.#openLoop(z, this.#plant.first(z));
  }

  /** Feedback from the position error to the current command, A/m. */
  feedback(omega: number): Complex {
    const z = unit(omega * this.period);
    const plant = this.#plant.first(z);
    return over(this.#openLoop(z, plant), plant);
  }

  #openLoop(z: Complex, plant: Complex): Complex {
    const { position, speed } = this.#controller.feedback(z);
    const speedPlant = this.#speedPlant === this.#plant ? plant : this.#speedPlant.first(z);
    return plus(times(position, plant), times(speed, speedPlant));
  }

  /** Table position over the force on it, m/N. */
  compliance(omega: number): Complex {
    const responses = this.#underForce.at(unit(omega * this.period));
    return responses.reduce(
      (sum, response, m) => plus(sum, times(response, unit(omega * m * this.#currentPeriod))),
      { re: 0, im: 0 },
    );
  }

  at(omega: number): LoopResponse {
    const z = unit(omega * this.period);
    const plant = this.#plant.first(z);
    const openLoop = this.#openLoop(z, plant);
    const sensitivity = over(ONE, plus(ONE, openLoop));
    return {
      openLoop,
      sensitivity,
      closedLoop: times(openLoop, sensitivity),
      tracking: times(times(plant, sensitivity), this.#controller.feedforward(z, omega)),
      compliance: this.compliance(omega),
    };
  }

  /** Force over deflection at standstill, N/m. */
  get staticStiffness(): number {
    return this.#stiffAtRest ? Number.POSITIVE_INFINITY : 1 / Math.abs(this.compliance(0).re);
  }
}
