import { DRAG_REVERSAL } from '../../shared/axis/drag.ts';
import { at, valueAt } from '../../shared/core/at.ts';
import { flexibleModes } from '../../shared/core/movedMass.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { OperatingPoint } from '../../shared/protocol/analysis.ts';
import { jacobian } from '../math/jacobian.ts';
import { Matrix } from '../math/matrix.ts';
import { solve } from '../math/solve.ts';
import { Plant } from '../model/plant.ts';
import { baseAt, CURRENTS, modesAt, V1, V2, X1, X2, Z } from '../model/state.ts';

/** Largest number of Newton steps; three to five are usual. */
const MAX_STEPS = 30;
/**
 * The search ends when no value changes by more than this share of the step of its difference
 * quotient; the error that remains is far smaller.
 */
const SETTLED = 1e-6;

/**
 * Steps of the difference quotients: small against every scale of the model, large against
 * rounding. m, m, V, N.
 */
const POSITION_STEP = 1e-6;
const BRISTLE_STEP = 1e-8;
const VOLTAGE_STEP = 1;
const FORCE_STEP = 1;
/** Steps of speed and current as shares of the smallest scale in their equations. */
const SPEED_SHARE = 1e-3;
const SPEED_SHARE_AT_REST = 1e-5;
const CURRENT_SHARE = 1e-3;

/** The plant in equilibrium, and its partial derivatives there. */
interface Equilibrium {
  readonly plant: Plant;
  /** States of the plant, then v_d, v_q (V) and the force on the table (N). */
  readonly values: readonly number[];
  /** ∂(y')/∂(values), one row per state. */
  readonly partials: Matrix;
}

/**
 * Finds what holds the axis at its operating point: the currents, voltages and deflections at
 * which, for the given position and speed of the table, no speed, current or bristle deflection
 * changes and Σ i_d = 0. At rest the bristles are relaxed and the motor carries the load. Newton's
 * method on the plant's own derivative.
 *
 * @throws RangeError when no motor current can hold the point
 */
export function equilibrium(p: Parameters, point: OperatingPoint): Equilibrium {
  const plant = new Plant(p.motorCount, p.base, flexibleModes(p).length);
  plant.configure(p, {
    winding: point.windingTemperature,
    carrier: point.carrierTemperature,
    table: point.tableTemperature,
    screw: point.screwTemperature,
  });
  const { size } = plant;
  const { windings, process } = plant.terms;
  const values = [...plant.initialState(point.position), 0, 0, point.loadForce];
  values[V1] = point.speed;
  values[V2] = point.speed;

  const currents = Array.from({ length: 2 * plant.motors }, (_, k) => CURRENTS + k);
  const first = modesAt(plant.motors, p.base);
  for (let k = first; k < size; k += 2) values[k + 1] = point.speed;
  const positions = Array.from(
    { length: (size - baseAt(plant.motors)) / 2 },
    (_, k) => baseAt(plant.motors) + 2 * k,
  );
  const speeds = positions.map((k) => k + 1);
  /** The plant's derivative, with Σ i_d in the row of v_d. */
  const rates = (x: number[], out: number[]) => {
    windings.voltageD = at(x, size);
    windings.voltageQ = at(x, size + 1);
    process.force = at(x, size + 2);
    plant.listDerivative(0, x, out);
    let sum = 0;
    for (let k = CURRENTS; k < CURRENTS + 2 * plant.motors; k += 2) sum += at(x, k);
    out[size] = sum;
    out[size + 1] = 0;
    out[size + 2] = 0;
  };

  const steps = differenceSteps(p, plant, point.speed);
  const left = new Array<number>(values.length).fill(0);
  let partials = jacobian(rates, values, steps);
  const bristles = partials.get(Z, Z) === 0 ? [] : [Z];
  const unknowns = [X1, ...bristles, ...currents, ...positions, size, size + 1];
  const equations = [V1, V2, ...bristles, ...currents, ...speeds, size];
  for (let step = 0; step < MAX_STEPS; step++) {
    rates(values, left);
    const system = Matrix.of(equations.map((row) => unknowns.map((column) => partials.get(row, column))));
    const change = solve(
      system,
      equations.map((row) => -at(left, row)),
    );
    if (change === null || !change.every(Number.isFinite)) break;
    let settled = true;
    for (const [k, index] of unknowns.entries()) {
      const by = valueAt(change, k);
      values[index] = at(values, index) + by;
      settled &&= Math.abs(by) <= SETTLED * at(steps, index);
    }
    partials = jacobian(rates, values, steps);
    if (settled) return { plant, values, partials };
  }
  throw new RangeError(
    `The motor cannot hold this axis with any current: gravity, drag and a loadForce of ${point.loadForce} N are more than it can give.`,
  );
}

/** Steps of the difference quotients, one per state and input; 0 for the energies. */
function differenceSteps(p: Parameters, plant: Plant, speed: number): number[] {
  const steps = new Array<number>(plant.size + 3).fill(0);
  const finest = Math.min(DRAG_REVERSAL, p.stribeckSpeed, p.dampingFadeSpeed);
  // Friction is not smooth at standstill: stay close to it, or well to one side of it.
  const speedStep =
    speed === 0 ? SPEED_SHARE_AT_REST * finest : SPEED_SHARE * Math.min(finest, Math.abs(speed));
  const currentStep = CURRENT_SHARE * (p.saturationCurrent > 0 ? p.saturationCurrent : p.peakCurrent);
  steps[X1] = POSITION_STEP;
  steps[X2] = POSITION_STEP;
  steps[V1] = speedStep;
  steps[V2] = speedStep;
  steps[Z] = BRISTLE_STEP;
  steps.fill(currentStep, CURRENTS, CURRENTS + 2 * plant.motors);
  for (let k = baseAt(plant.motors); k < plant.size; k += 2) {
    steps[k] = POSITION_STEP;
    steps[k + 1] = speedStep;
  }
  steps[plant.size] = VOLTAGE_STEP;
  steps[plant.size + 1] = VOLTAGE_STEP;
  steps[plant.size + 2] = FORCE_STEP;
  return steps;
}
