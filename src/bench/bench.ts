import {
  PARAMETER_NAMES,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
} from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { onPage } from '../../shared/core/sentence.ts';
import type { PretuneGoal } from '../../shared/protocol/pretune.ts';
import type { AskedOfSheet } from '../../shared/sheet/askedRows.ts';

/** How the bench words names and values; its fields and gauges are metric. */
export const BENCH_WORDING = onPage('metric');

/** What is on the bench: the scene as it was opened, with the drive chosen for it, and the parameters as they stand now. */
export interface Bench {
  /** Where a field goes back to when it is reset. */
  readonly origin: Scene;
  readonly parameters: Parameters;
  /** The goal of the last pretuning, and what it set. */
  readonly pretuned?: Pretuned;
}

interface Pretuned {
  readonly goal: PretuneGoal;
  readonly changes: ParameterChanges;
}

export function benchOf(scene: Scene): Bench {
  return { origin: scene, parameters: scene.parameters };
}

/** The scene as it is set now, for the worker, a file or a link. */
export function presentScene({ origin, parameters }: Bench): Scene {
  return { ...origin, parameters };
}

/** The bench with parameters changed; the same object when nothing differs. */
export function withChanges(bench: Bench, changes: ParameterChanges): Bench {
  const parameters = { ...bench.parameters, ...changes };
  return changedNames(bench.parameters, parameters).length === 0 ? bench : { ...bench, parameters };
}

/** What pretuning was asked for, and whether a value that it set is another one now; null: the gains are by hand. */
export function askedOf({ pretuned, parameters }: Bench): AskedOfSheet | null {
  if (!pretuned) return null;
  const isChanged = Object.entries(pretuned.changes).some(
    ([name, value]) => parameters[name as ParameterName] !== value,
  );
  return { goal: pretuned.goal, isChanged };
}

export function changedNames(from: Parameters, to: Parameters): ParameterName[] {
  return PARAMETER_NAMES.filter((name) => from[name] !== to[name]);
}

/** What turns `from` into `to`. */
export function differences(from: Parameters, to: Parameters): ParameterChanges {
  return Object.fromEntries(changedNames(from, to).map((name) => [name, to[name]]));
}
