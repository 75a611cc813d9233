import { MeshBasicMaterial } from 'three';
import { PRESETS, SCENES } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import type { DriveType } from '../../../shared/core/scene.ts';
import { benchOf } from '../../../src/bench/bench.ts';
import { withPreset } from '../../../src/bench/presets.ts';
import type { Materials } from '../../../src/stage/build/materials.ts';

/** Materials that know nothing but their names. */
export function namedMaterials(): Materials {
  const named = (name: string) => Object.assign(new MeshBasicMaterial(), { name });
  const groups = { lettered: ['north', 'south'], phases: ['U', 'V', 'W'] };
  return new Proxy({} as Record<string, unknown>, {
    get(made, name: keyof typeof groups) {
      made[name] ??= groups[name]
        ? Object.fromEntries(groups[name].map((each) => [each, named(each)]))
        : named(name);
      return made[name];
    },
  }) as unknown as Materials;
}

/** The kits of a form of drive in the first scene, by their names. */
export const kits = (driveType: DriveType) =>
  Object.keys(PRESETS).flatMap((id) => {
    if (PRESETS[id]?.driveType !== driveType) return [];
    const chosen = withPreset(benchOf(at(SCENES, 0)), id, PRESETS);
    if ('problems' in chosen) throw new Error(`${id} does not fit`);
    return [[id, chosen.parameters] as const];
  });
