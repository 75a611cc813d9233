import { type LoopStructure, structureChanges, structuresOf } from '../../../shared/axis/loop/structures.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { PretuneGoal, PretuneProgress, PretuneResult } from '../../../shared/protocol/pretune.ts';
import { errorText } from '../../clients/errorText.ts';
import type { PretuneClient } from '../../clients/pretuneClient.ts';
import { WorkerFailure } from '../../clients/workerHost.ts';

/** What pretuning made of one structure: its result, or why there is none. */
export interface ComparedStructure {
  readonly structure: LoopStructure;
  readonly found: PretuneResult | string;
  /** Gives the axis this structure with its pretuned gains. */
  readonly changes: ParameterChanges;
}

/**
 * Every structure that the axis can have, pretuned for the same goal on the same machine. Null when it was cancelled.
 *
 * @throws WorkerFailure when a worker fails
 */
export async function compareStructures(
  client: PretuneClient,
  scene: Scene,
  goal: PretuneGoal,
  onProgress: (structure: string, progress: PretuneProgress) => void,
): Promise<ComparedStructure[] | null> {
  const compared: ComparedStructure[] = [];
  for (const structure of structuresOf(scene.parameters)) {
    const chosen = structureChanges(scene.parameters, structure);
    const parameters = { ...scene.parameters, ...chosen };
    const say = (progress: PretuneProgress) => onProgress(structure.name, progress);
    try {
      const found = await client.pretune({ ...scene, parameters }, goal, say, 'one limit');
      if (found === null) return null;
      compared.push({ structure, found, changes: { ...chosen, ...found.best.changes } });
    } catch (error) {
      if (error instanceof WorkerFailure) throw error;
      compared.push({ structure, found: errorText(error), changes: chosen });
    }
  }
  return compared;
}
