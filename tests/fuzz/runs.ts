import fc from 'fast-check';
import { at, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_NAMES } from '../../shared/core/channels.ts';
import { flexibleModes } from '../../shared/core/movedMass.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { writeScene } from '../../shared/files/sceneFile.ts';
import { startTemperatures } from '../../workers/model/heat.ts';
import { Plant } from '../../workers/model/plant.ts';
import { stepCount } from '../../workers/solver/stepCount.ts';

/*
 * How long a random scene runs. One in seven has a plant so stiff that a period of the current loop takes a hundred times as long as usual;
 * together they took nine tenths of the time. So what a run may cost is given, not its length: most run briefly, some until all but the stiffest
 * have done what they do. It is counted in steps of the plant, never by the clock, so that an example that fails can be repeated.
 */
export const anyWork = fc.oneof(
  { arbitrary: fc.constant(1_200), weight: 19 },
  { arbitrary: fc.constant(8_400), weight: 1 },
);

/** What a period of the current loop costs beside its plant, in steps of one. */
const CONTROLLER = 6;

/** What one period of the current loop costs with these parameters. */
export function costOfPeriod(p: Parameters): number {
  const plant = new Plant(p.motorCount, p.base, flexibleModes(p).length);
  plant.configure(p, startTemperatures(p));
  return CONTROLLER + stepCount(plant, p, 1 / p.currentRate);
}

export function expectFinite(record: Float64Array, time: string): void {
  for (let c = 0; c < record.length; c++)
    if (!Number.isFinite(valueAt(record, c)))
      throw new Error(`${at(CHANNEL_NAMES, c)} is ${record[c]} at ${time}`);
}

/** What goes wrong with a scene is shown with the scene, to be saved as a file and run. */
export function reproducibly(scene: Scene, check: () => void): void {
  try {
    check();
  } catch (error) {
    const how = 'npm run axis -- this-scene.json --seconds 0.05';
    throw new Error(`${error instanceof Error ? error.message : error}\n${how}\n${writeScene(scene)}`);
  }
}
