import { valueAt } from '../core/at.ts';
import { PARAMETERS } from '../core/parameters/table.ts';
import type { Scene } from '../core/scene.ts';
import type { Limits } from './runFigures.ts';
import { latinHypercube } from './sampling/latinHypercube.ts';
import { MAX_DIMENSIONS, sobolPoints } from './sampling/sobol.ts';
import { type NumberName, type Spread, spreadValue } from './spread.ts';

export const SAMPLINGS = ['Sobol', 'Latin hypercube'] as const;
type Sampling = (typeof SAMPLINGS)[number];

/** More inputs than the table of directions has dimensions. */
export const MAX_SPREADS = MAX_DIMENSIONS;
export const MAX_RUNS = 100_000;

export type Spreads = Readonly<Partial<Record<NumberName, Spread>>>;

/** A scene that is built many times over, each machine a little different. Complete and checked. */
export interface ToleranceStudy {
  readonly scene: Scene;
  readonly spreads: Spreads;
  readonly limits: Limits;
  readonly sampling: Sampling;
  /** Whole, of the sampling and of the encoder noise of each machine. */
  readonly seed: number;
  readonly runs: number;
}

/** A machine of the study. */
export interface Machine {
  readonly scene: Scene;
  /** Its values of what spreads, in the order of the study. */
  readonly values: Float64Array;
}

export function spreadNames({ spreads }: Pick<ToleranceStudy, 'spreads'>): NumberName[] {
  return Object.keys(spreads) as NumberName[];
}

/** The machines of a study by their number, from 1. The same study has the same machines everywhere, in whichever order they are asked for. */
export function machinesOf(study: ToleranceStudy): (run: number) => Machine {
  const { scene, spreads, sampling, seed, runs } = study;
  const names = spreadNames(study);
  const point =
    sampling === 'Sobol' ? sobolPoints(names.length, seed) : latinHypercube(names.length, seed, runs);
  return (run) => {
    const u = point(run - 1);
    const values = Float64Array.from(names, (name, k) =>
      spreadValue(spreads[name] as Spread, scene.parameters[name], valueAt(u, k)),
    );
    const changes = Object.fromEntries(names.map((name, k) => [name, valueAt(values, k)]));
    const noise = (scene.parameters.seed + run) % PARAMETERS.seed.max;
    return { values, scene: { ...scene, parameters: { ...scene.parameters, ...changes, seed: noise } } };
  };
}
