import { scaleStrain } from '../../shared/axis/growth.ts';
import { GUIDE_FRICTION } from '../../shared/axis/guide.ts';
import { wornParameters } from '../../shared/axis/wear.ts';
import { at } from '../../shared/core/at.ts';
import { shortest } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { OperatingPoint } from '../../shared/protocol/analysis.ts';
import { Encoder } from '../control/encoder.ts';
import { Matrix } from '../math/matrix.ts';
import { CURRENTS, V1, V2, X1, X2, Z } from '../model/state.ts';
import { equilibrium } from './equilibrium.ts';

/** Step for the slope of the encoder at standstill, as a share of its signal period. */
const ENCODER_SHARE = 1e-4;

/**
 * The plant about its operating point: y' = A y + B u, u = (v_d, v_q, force on the table), V and N.
 */
export interface LinearPlant {
  readonly a: Matrix;
  readonly b: Matrix;
  /** Signals of the states: encoder reading, table position, Σ i_d and Σ i_q as sampled. */
  readonly reading: Float64Array;
  /** What the speed is measured from: the same, or the motor encoder of dual-loop control. */
  readonly speedReading: Float64Array;
  readonly table: Float64Array;
  readonly currentD: Float64Array;
  readonly currentQ: Float64Array;
  /**
   * At the operating point: summed currents (A), voltages (V) and the speed seen by the controller
   * (m/s).
   */
  readonly heldCurrentD: number;
  readonly heldCurrentQ: number;
  readonly voltageD: number;
  readonly voltageQ: number;
  readonly speed: number;
}

/**
 * Linearises the plant's own derivative, so that there is no second copy of the model. Lost motion
 * in the link is taken as closed, the drive as enabled, the encoder as free of noise and rounding.
 *
 * @throws RangeError naming the value of the operating point that is out of range, with the allowed
 * range
 */
export function linearise(given: Parameters, point: OperatingPoint): LinearPlant {
  checkPoint(given, point);
  const p = analysed(given, point);
  const { plant, values, partials } = equilibrium(p, point);

  // At rest z' = v2: the deflection of the bristles is that of the table, but for a constant that
  // no loop can see or change.
  const bristlesMove = partials.get(Z, Z) !== 0;
  const states = [X1, V1, X2, V2, ...(bristlesMove ? [Z] : [])];
  for (let k = CURRENTS; k < plant.size; k++) states.push(k);
  const inputs = [plant.size, plant.size + 1, plant.size + 2];
  const pick = (columns: readonly number[]) =>
    Matrix.of(states.map((row) => columns.map((column) => partials.get(row, column))));
  const a = pick(states);
  if (!bristlesMove) {
    for (const [i, row] of states.entries()) a.add(i, states.indexOf(X2), partials.get(row, Z));
  }

  const row = (chosen: (state: number) => number) => Float64Array.from(states, chosen);
  const side = p.encoderSide === 'load' ? X2 : X1;
  const slope = encoderSlope(p, at(values, side), point);
  const isCurrent = (state: number, axis: 0 | 1) =>
    state >= CURRENTS && state < CURRENTS + 2 * plant.motors && (state - CURRENTS) % 2 === axis;
  const sum = (axis: 0 | 1) =>
    values.reduce((total, value, state) => (isCurrent(state, axis) ? total + value : total), 0);
  return {
    a,
    b: pick(inputs),
    reading: row((state) => (state === side ? slope : 0)),
    speedReading: row((state) =>
      p.speedSource === 'motor encoder' ? (state === X1 ? 1 : 0) : state === side ? slope : 0,
    ),
    table: row((state) => (state === X2 ? 1 : 0)),
    currentD: row((state) => (isCurrent(state, 0) ? 1 : 0)),
    currentQ: row((state) => (isCurrent(state, 1) ? 1 : 0)),
    heldCurrentD: sum(0),
    heldCurrentQ: sum(1),
    voltageD: at(values, plant.size),
    voltageQ: at(values, plant.size + 1),
    speed: (p.speedSource === 'motor encoder' ? 1 : slope) * point.speed,
  };
}

/** The parameters to linearise; for those set to zero see `friction` of the operating point. */
function analysed(p: Parameters, point: OperatingPoint): Parameters {
  const closed: Parameters = { ...wornParameters(p), kilometresTravelled: 0, drive: 'on', backlash: 0 };
  if (point.friction === 'presliding' || point.speed !== 0) return closed;
  const dry = [...GUIDE_FRICTION, 'hysteresisDrag', 'nutDrag'] as const;
  return { ...closed, ...Object.fromEntries(dry.map((name) => [name, 0])) };
}

/**
 * Change of the reading per change of position: thermal growth, and at standstill the slope of the
 * interpolation error. A moving axis passes through that error and sees its mean over a signal
 * period.
 */
function encoderSlope(p: Parameters, position: number, point: OperatingPoint): number {
  const encoder = new Encoder(0);
  encoder.configure({ ...p, encoderResolution: 0, encoderNoise: 0 });
  const strain = scaleStrain(p, point.tableTemperature);
  const h = (point.speed === 0 ? ENCODER_SHARE : 0.5) * p.signalPeriod;
  const read = (u: number) => encoder.read(u, strain);
  return (read(position + h) - read(position - h)) / (2 * h);
}

function checkPoint(p: Parameters, point: OperatingPoint): void {
  if (!(point.position >= p.travelMin && point.position <= p.travelMax)) {
    throw new RangeError(
      `position is ${shortest(point.position, 'mm')}; allowed is the travel, ${shortest(p.travelMin, 'mm')} to ${shortest(p.travelMax, 'mm')}.`,
    );
  }
  if (!(Math.abs(point.speed) <= p.speedLimit)) {
    throw new RangeError(
      `speed is ${shortest(point.speed, 'm/s')}; allowed is up to the speed limit, ${shortest(p.speedLimit, 'm/s')}.`,
    );
  }
  if (point.friction === 'presliding' && point.speed !== 0) {
    throw new RangeError(
      `speed is ${shortest(point.speed, 'm/s')}; with friction presliding the table stands: allowed is 0, or friction sliding.`,
    );
  }
  for (const name of [
    'loadForce',
    'windingTemperature',
    'carrierTemperature',
    'tableTemperature',
    'screwTemperature',
  ] as const) {
    if (!Number.isFinite(point[name]))
      throw new RangeError(`${name} is ${point[name]}; it must be a finite number.`);
  }
}
