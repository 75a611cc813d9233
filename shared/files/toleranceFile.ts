import { unknownName, within } from '../core/problem.ts';
import type { Scene, Shelf } from '../core/scene.ts';
import { MODEL_VERSION } from '../core/version.ts';
import { checkTolerance, type ToleranceResult } from '../tolerance/checkTolerance.ts';
import type { ToleranceStudy } from '../tolerance/toleranceStudy.ts';
import { type Entries, openFile } from './jsonFile.ts';
import { readScene, sceneEntries } from './sceneFile.ts';

/**
 * A file of a tolerance study is JSON, all values SI:
 *
 *     { "waybench": "tolerance study", "version": 1, "model": 1, "scene": { … } or "mould-shuttle",
 *       "spreads": { "payload": { "kind": "per cent", "share": 0.1 },
 *                    "viscous": { "kind": "uniform", "from": 10, "to": 25 },
 *                    "linkStiffness": { "kind": "normal", "mean": 1.2e8, "deviation": 1e7, "cut": 3 } },
 *       "limits": { "settlingTime": 0.08 }, "sampling": "Sobol" or "Latin hypercube", "seed": 1, "runs": 10000 }
 *
 * What is written holds the whole scene, so it always means the same.
 */
const TOLERANCE_VERSION = 1;

const FILE_ENTRIES = ['waybench', 'version', 'scene', 'spreads', 'limits', 'sampling', 'seed', 'runs'];

/** Reads the text of a file of a tolerance study, or its parsed value. Total: a legal study, or what is wrong. */
export function readTolerance(input: unknown, shelf: Shelf): ToleranceResult {
  const opened = openFile(input, 'tolerance study', TOLERANCE_VERSION);
  if ('problems' in opened) return opened;
  const { entries } = opened;
  const stray = Object.keys(entries).find((name) => !FILE_ENTRIES.includes(name));
  if (stray !== undefined)
    return { problems: [unknownName('an entry of a tolerance study', stray, FILE_ENTRIES, entries[stray])] };
  const { scene, spreads, limits = {}, sampling = 'Sobol', seed = 1, runs = 1000 } = entries;
  const read = sceneOf(scene, shelf);
  if ('problems' in read) return { problems: read.problems.map((each) => within('scene', each)) };
  return checkTolerance(read.scene, { spreads, limits, sampling, seed, runs });
}

function sceneOf(input: unknown, shelf: Shelf): ReturnType<typeof readScene> | { readonly scene: Scene } {
  const found = shelf.scenes.find(({ id }) => id === input);
  return found ? { scene: found } : readScene(input, shelf);
}

/** Reads back as the same study, number by number. */
export function writeTolerance(study: ToleranceStudy): string {
  return `${JSON.stringify(toleranceEntries(study), null, 2)}\n`;
}

export function toleranceEntries({ scene, ...others }: ToleranceStudy): Entries {
  return {
    waybench: 'tolerance study',
    version: TOLERANCE_VERSION,
    model: MODEL_VERSION,
    scene: sceneEntries(scene),
    ...others,
  };
}
