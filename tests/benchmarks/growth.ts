import { DEFAULT_STUDY } from '../../scenes/defaultStudy.ts';
import { PRESETS, sceneById } from '../../scenes/index.ts';
import { at } from '../../shared/core/at.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import { batchSolver, odexSolver } from '../../workers/solver/engine.ts';
import { timed } from './enginePace.ts';

interface Growth {
  readonly name: string;
  /** Processor time of the batch engine over that of the plain machine. */
  readonly cost: number;
}

const ROUNDS = 5;
const SECONDS = 0.5;

/** What more motors and more resonances cost, each on the same machine with one motor and none. */
export function growth(): Growth[] {
  const plain = sceneById('mould-shuttle');
  const modes = ['table', 'table', 'motor side'] as const;
  const resonances = (count: number): ParameterChanges =>
    Object.fromEntries(modes.slice(0, count).map((side, k) => [`mode${k + 1}`, side]));
  const several = [
    ...[2, 3, 4].map((n) => ({ name: `${n} motors`, changes: { motorCount: n } })),
    ...[1, 2, 3].map((n) => ({ name: `${n} resonance${n > 1 ? 's' : ''}`, changes: resonances(n) })),
  ];
  const scenes = [plain, ...several.map(({ changes }) => withChanges(plain, changes))];
  const best = scenes.map(() => 0);
  for (let round = 0; round < ROUNDS; round++)
    scenes.forEach((scene, k) => {
      best[k] = Math.max(at(best, k), timed(scene, batchSolver, SECONDS).pace);
    });
  return several.map(({ name }, k) => ({ name, cost: at(best, 0) / at(best, k + 1) }));
}

/** How many processors the candidates of the study that opens first take side by side in real time, drawing left out: 1, 2, ... of them. */
export function besideCost(): number[] {
  const { job, candidates } = DEFAULT_STUDY;
  const scenes = candidates.map((choice) => candidateScene(job, choice, PRESETS));
  const costs = scenes.map((scene) => {
    timed(scene, odexSolver, 0.1);
    return 1 / Math.max(...[1, 2, 3].map(() => timed(scene, odexSolver, SECONDS).pace));
  });
  return costs.map((_, k) => costs.slice(0, k + 1).reduce((sum, cost) => sum + cost, 0));
}

function withChanges(scene: Scene, changes: ParameterChanges): Scene {
  return { ...scene, parameters: { ...scene.parameters, ...changes } };
}
