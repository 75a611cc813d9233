import { sinkTemperature } from '../../shared/axis/temperature.ts';
import { valueAt } from '../../shared/core/at.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { Matrix } from '../math/matrix.ts';
import { matrixExponential } from '../math/matrixExponential.ts';
import { solve } from '../math/solve.ts';
import { HeatPaths } from '../model/heat.ts';
import type { Temperatures } from '../model/state.ts';
import { type Cycle, type CyclePart, lossesAt } from './cycle.ts';

/*
 * The effect of whole cycles on the four temperatures x.
 *
 *   C x' = f_k(x)                        part k of the cycle: network and losses at x, W
 *   x'   = J_k x + c_k                   linear about x0; only the force per ampere bends it
 *   X_k  = exp([J_k c_k; 0 0] t_k)       exact over the part, on (x, 1)
 *   X    = X_K … X_2 X_1                 one cycle; n cycles are X^n, in about 2 log2 n products
 *
 * So minutes are one step that still contains the rise and fall within each cycle. Including the
 * slope of the losses makes it exact to second order in what is not linear: Hochbruck, Ostermann,
 * Exponential integrators, Acta Numerica 19, 2010, sec. 2.
 */

const NODES = ['winding', 'carrier', 'table', 'screw'] as const;
const SIZE = NODES.length + 1;

/**
 * Half the temperature difference for slopes, K: the network is linear in it, the flux nearly so.
 */
const PROBE = 1;

export class CycleMap {
  readonly #parts: readonly Matrix[];
  readonly #whole: Matrix;

  /** @param about temperatures at which the losses are linearised */
  constructor(p: Parameters, cycle: Cycle, about: Temperatures) {
    this.#parts = cycle.parts.map((part) => partMap(p, cycle, part, about));
    this.#whole = this.#parts.reduce((before, part) => part.times(before));
  }

  /** Temperatures after a number of cycles. */
  after(t: Temperatures, cycles: number): Temperatures {
    let state = columnOf(t);
    let power = this.#whole;
    for (let left = cycles; left > 0; left = Math.floor(left / 2)) {
      if (left % 2 === 1) state = power.times(state);
      if (left > 1) power = power.times(power);
    }
    return temperaturesOf(state.data);
  }

  /** Temperatures at the start of a cycle and after each of its parts. */
  through(t: Temperatures): Temperatures[] {
    let state = columnOf(t);
    const passed = this.#parts.map((part) => {
      state = part.times(state);
      return temperaturesOf(state.data);
    });
    return [t, ...passed];
  }

  /**
   * Temperatures that a cycle leaves unchanged; null when there are none above those of the
   * surroundings.
   */
  fixedPoint(p: Parameters): Temperatures | null {
    const left = new Matrix(NODES.length, NODES.length);
    const right = new Float64Array(NODES.length);
    for (let i = 0; i < NODES.length; i++) {
      for (let j = 0; j < NODES.length; j++) left.set(i, j, (i === j ? 1 : 0) - this.#whole.get(i, j));
      right[i] = this.#whole.get(i, NODES.length);
    }
    const found = solve(left, right);
    // Heat flows from warm to cold: a balance colder than the surroundings belongs to losses that
    // outgrow the heat flow.
    const coldest = Math.min(p.ambient, sinkTemperature(p)) - PROBE;
    return found?.every((value) => value > coldest) ? temperaturesOf(found) : null;
  }
}

function partMap(p: Parameters, cycle: Cycle, part: CyclePart, about: Temperatures): Matrix {
  const generator = new Matrix(SIZE, SIZE);
  const middle = ratesAt(p, cycle, part, about);
  NODES.forEach((node, j) => {
    const above = ratesAt(p, cycle, part, { ...about, [node]: about[node] + PROBE });
    const below = ratesAt(p, cycle, part, { ...about, [node]: about[node] - PROBE });
    NODES.forEach((each, i) => {
      generator.set(i, j, (above[each] - below[each]) / (2 * PROBE));
    });
  });
  NODES.forEach((each, i) => {
    const linear = NODES.reduce((sum, node, j) => sum + generator.get(i, j) * about[node], 0);
    generator.set(i, NODES.length, middle[each] - linear);
  });
  return matrixExponential(generator.mapped((rate) => rate * part.duration));
}

/** K/s of each node. */
function ratesAt(p: Parameters, cycle: Cycle, part: CyclePart, t: Temperatures): Temperatures {
  const rates = { ...t };
  new HeatPaths(p).heatInto(t, part.draught, lossesAt(p, cycle, part, t.winding, t.carrier), 1, rates);
  rates.winding /= p.windingCapacity;
  rates.carrier /= p.carrierCapacity;
  rates.table /= p.tableCapacity;
  rates.screw /= p.screwCapacity;
  return rates;
}

function columnOf(t: Temperatures): Matrix {
  return Matrix.of([...NODES.map((node) => [t[node]]), [1]]);
}

function temperaturesOf(x: Float64Array): Temperatures {
  return { winding: valueAt(x, 0), carrier: valueAt(x, 1), table: valueAt(x, 2), screw: valueAt(x, 3) };
}
