import {
  PARAMETERS,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
} from './parameters/table.ts';
import { didYouMean, entryFailure, type Failure, isNot } from './problem.ts';
import type { Preset, Presets } from './scene.ts';

/** The preset with this id; anything may come in. */
export function findPreset(id: unknown, presets: Presets): Preset | Failure {
  const preset = typeof id === 'string' && Object.hasOwn(presets, id) ? presets[id] : undefined;
  if (preset) return preset;
  const known = Object.keys(presets);
  const meant = typeof id === 'string' ? didYouMean(id, known) : '';
  return entryFailure('preset', id, `${isNot(id, `one of ${known.join(', ')}`)}${meant}`);
}

/**
 * The preset of a choice that has been checked.
 * @throws RangeError naming the id when there is none
 */
export function presetById(id: string, presets: Presets): Preset {
  const preset = presets[id];
  if (!preset) throw new RangeError(`There is no preset “${id}”.`);
  return preset;
}

/** Motors of a drive that may work in parallel: two do not share a screw. */
export function maxMotors({ driveType }: Preset): number {
  return driveType === 'screw' ? 1 : PARAMETERS.motorCount.max;
}

/** What adds up when motors work in parallel: ratings, heat paths, and the mountings that hold them to the table. */
const PER_MOTOR = [
  'peakCurrent',
  'continuousCurrent',
  'windingCapacity',
  'carrierCapacity',
  'windingToCarrier',
  'carrierToAir',
  'carrierToCoolant',
  'carrierToTable',
  'linkStiffness',
  'linkDamping',
] as const;

/** Parameters of an axis with `motorCount` motors of this drive. A preset itself states them for one motor. */
export function presetParameters(preset: Preset, motorCount: number): ParameterChanges {
  const changes: ParameterChanges = { ...preset.parameters };
  for (const name of PER_MOTOR) {
    const single = changes[name];
    if (single !== undefined) changes[name] = motorCount * single;
  }
  return changes;
}

/** Names of the drive's parameters that are not as the preset has them for this number of motors. */
export function changedFromPreset(preset: Preset, parameters: Parameters): ParameterName[] {
  const asPreset = presetParameters(preset, parameters.motorCount);
  return (Object.keys(asPreset) as ParameterName[]).filter((name) => asPreset[name] !== parameters[name]);
}
