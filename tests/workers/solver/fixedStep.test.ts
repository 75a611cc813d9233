import { describe, expect, it } from 'vitest';
import { flexibleModes } from '../../../shared/core/movedMass.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { Plant } from '../../../workers/model/plant.ts';
import { E_IN, newState, type State, V1, V2, X1, X2 } from '../../../workers/model/state.ts';
import { FixedStepSolver } from '../../../workers/solver/fixedStep.ts';
import { DivergedError } from '../../../workers/solver/tickSolver.ts';
import { bareScene } from '../model/sceneOf.ts';

const COLD = { winding: 20, carrier: 20, table: 20, screw: 20 };
const SPAN = 1e-4;

function plantOf(changes: ParameterChanges): Plant {
  const { parameters: p } = bareScene({ drive: 'off', ...changes });
  const plant = new Plant(p.motorCount, p.base, flexibleModes(p).length);
  plant.configure(p, COLD);
  return plant;
}

/** Carries the plant from a state over so many periods; `steps` are the fewest and the most in one. */
function carried(plant: Plant, from: State, periods: number, steps: readonly [number, number]): State {
  const solver = new FixedStepSolver(plant, SPAN, steps);
  let [y, next] = [newState(from.length), newState(from.length)];
  y.set(from);
  const store = { energy: plant.storedEnergy(y) };
  for (let k = 0; k < periods; k++) {
    solver.advance(y, next, store);
    [y, next] = [next, y];
    y.fill(0, E_IN, E_IN + 7);
  }
  return y;
}

describe('two masses on a spring', () => {
  const [coilMass, tableMass, payload, linkStiffness] = [2, 6, 0, 3e6];
  const plant = plantOf({ coilMass, tableMass, payload, linkStiffness, linkDamping: 0 });
  const start = plant.initialState(0);
  /** m: far more than the energy account lets pass in any case. */
  const stretch = 1e-5;
  start[X1] = stretch;
  const omega = Math.sqrt(linkStiffness * (1 / coilMass + 1 / tableMass));
  /** How far the stretch is from stretch · cos ωt after 20 periods, m. */
  const error = (steps: number) => {
    const y = carried(plant, start, 20, [steps, steps]);
    return Math.abs(y[X1] - y[X2] - stretch * Math.cos(omega * 20 * SPAN));
  };

  it('swing as the formula says, with an error of fourth order in the step', () => {
    expect(error(8)).toBeLessThan(1e-6 * stretch);
    expect(error(2) / error(4)).toBeGreaterThan(14);
    expect(error(4) / error(8)).toBeGreaterThan(14);
    expect(error(4) / error(8)).toBeLessThan(18);
  });

  it('take more steps by themselves where the energy account asks for them', () => {
    const y = carried(plant, start, 20, [1, 8]);
    const off = Math.abs(y[X1] - y[X2] - stretch * Math.cos(omega * 20 * SPAN));
    expect(off).toBeLessThan(error(1) / 100);
  });
});

describe('lost motion', () => {
  const gap: ParameterChanges = {
    coilMass: 2,
    tableMass: 6,
    payload: 0,
    linkStiffness: 3e6,
    linkDamping: 0,
    backlash: 1e-5,
  };

  it('is crossed without force, and the impact leaves no energy behind', () => {
    const plant = plantOf(gap);
    const start = plant.initialState(0);
    start[V1] = 0.02;
    // The gap of 5 µm closes after 0.25 ms; half a swing, π/ω = 2.2 ms, later the masses part.
    const touching = carried(plant, start, 2, [1, 1]);
    expect(touching[X1] - touching[X2]).toBeCloseTo(4e-6, 12);
    const apart = carried(plant, start, 28, [1, 1]);
    // Elastic impact of two bodies: v1 = v (m1 − m2)/(m1 + m2), v2 = 2 v m1/(m1 + m2).
    const [m1, m2, v] = [2, 6, 0.02];
    expect(apart[V1] / ((v * (m1 - m2)) / (m1 + m2))).toBeCloseTo(1, 4);
    expect(apart[V2] / ((2 * v * m1) / (m1 + m2))).toBeCloseTo(1, 4);
  });

  it('is the same whether steps are long or short: none passes over the edge of the contact', () => {
    const plant = plantOf({ ...gap, linkDamping: 3000 });
    const start = plant.initialState(0);
    start[V1] = 0.02;
    const [long, short] = [2, 64].map((steps) => carried(plant, start, 40, [steps, steps])) as [State, State];
    expect(Math.abs(long[X2] - short[X2])).toBeLessThan(2e-11);
    expect(Math.abs(long[V2] - short[V2])).toBeLessThan(2e-7);
  });
});

it('says so when the state runs away', () => {
  const plant = plantOf({});
  const start = plant.initialState(0);
  start[V1] = Number.NaN;
  expect(() => carried(plant, start, 1, [1, 1])).toThrow(DivergedError);
});
