import { compensationRows } from '../../shared/core/parameters/compensation.ts';
import { loopRows } from '../../shared/core/parameters/drive.ts';
import { filterRows } from '../../shared/core/parameters/filters.ts';
import { moveRows } from '../../shared/core/parameters/motion.ts';
import { shapingRows } from '../../shared/core/parameters/shaping.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import type { Engine } from '../../shared/protocol/axis.ts';
import type { Plant } from '../model/plant.ts';
import type { State } from '../model/state.ts';
import type { Store } from '../model/term.ts';
import { FixedStepSolver } from './fixedStep.ts';
import { stepCount } from './stepCount.ts';
import { TickSolver } from './tickSolver.ts';
import { tolerances } from './tolerances.ts';

/** Carries the plant from one edge of the controller to the next. */
export interface PlantSolver {
  /** Its name in ENGINES. */
  readonly engine: Engine;
  /**
   * One period: fills `to` with what the state `from` comes to, and leaves `from` alone.
   *
   * @param store energy stored in `from`; when it returns, that in `to`
   * @throws DivergedError when the plant cannot be carried over it
   */
  advance(from: Readonly<State>, to: State, store: Store): void;
}

/** For a plant with these parameters and periods of `span` seconds. */
export type NewSolver = (plant: Plant, p: Parameters, span: number) => PlantSolver;

/** More fixed steps a period than this, and odex is no slower. */
const MAX_STEPS = 8;

/** With control of its error: the reference, and what the running axis takes. */
export const odexSolver: NewSolver = (plant, p, span) => {
  const { relative, absolute } = tolerances(p, plant.size);
  const solver = new TickSolver(plant.listDerivative, span, relative, absolute);
  return {
    engine: 'odex',
    advance(from, to, store) {
      solver.advance(from, to);
      plant.storeInto(to, store);
    },
  };
};

/** In fixed steps, for trials, studies and tests. A plant that is too stiff for them gets odex instead. */
export const batchSolver: NewSolver = (plant, p, span) => {
  const steps = stepCount(plant, p, span);
  return steps <= MAX_STEPS
    ? new FixedStepSolver(plant, span, [steps, MAX_STEPS])
    : odexSolver(plant, p, span);
};

const PLANTLESS: ReadonlySet<string> = new Set(
  [loopRows, filterRows, moveRows, shapingRows, compensationRows].flatMap(Object.keys),
);

/** Whether some of the changes can make the plant another one: gains and commands cannot. */
export function concernsPlant(changes: ParameterChanges): boolean {
  return Object.keys(changes).some((name) => !PLANTLESS.has(name));
}

/** By name. */
export const ENGINES: Readonly<Record<Engine, NewSolver>> = { odex: odexSolver, batch: batchSolver };
