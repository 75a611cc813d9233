import { startGains } from '../../shared/axis/startGains.ts';
import { checkParameters } from '../../shared/core/check.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
} from '../../shared/core/parameters/table.ts';
import { presetParameters } from '../../shared/core/preset.ts';
import type { Problem } from '../../shared/core/problem.ts';
import type { DriveType, Preset, Scene } from '../../shared/core/scene.ts';
import type { Bench } from './bench.ts';

export type Presets = Readonly<Record<string, Preset>>;

/** What makes a motor this motor; a scene may tune everything else of its drive and still be that drive. */
const MOTOR: readonly ParameterName[] = [
  'forceConstant',
  'torqueConstant',
  'resistance',
  'inductance',
  'polePitch',
  'lead',
];

/** The drive of the shelf that a scene uses, or null if its motor is none of them. */
export function presetOf(
  { driveType, parameters }: Pick<Scene, 'driveType' | 'parameters'>,
  presets: Presets,
): string | null {
  const isThis = (preset: Preset) =>
    preset.driveType === driveType &&
    MOTOR.every(
      (name) => preset.parameters[name] === undefined || preset.parameters[name] === parameters[name],
    );
  return Object.keys(presets).find((id) => isThis(presets[id]!)) ?? null;
}

/**
 * Everything that putting another drive on the bench changes: the drive's parameters, those of any other drive back to
 * their defaults, and start gains for the mass that is moved then.
 */
export function presetChanges(parameters: Parameters, id: string, presets: Presets): ParameterChanges {
  const preset = presets[id]!;
  const byDefault = defaultParameters();
  const names = Object.values(presets).flatMap((each) => Object.keys(each.parameters) as ParameterName[]);
  const drive = {
    ...Object.fromEntries(names.map((name) => [name, byDefault[name]])),
    ...presetParameters(preset, parameters.motorCount),
  } as ParameterChanges;
  return { ...drive, ...startGains({ ...parameters, ...drive }, preset.crossover) };
}

/** The bench with another drive on it; what the person changed of the job stays, and stays marked as changed. */
export function withPreset(
  bench: Bench,
  id: string,
  presets: Presets,
): Bench | { readonly problems: readonly Problem[] } {
  const { changes, problems } = checkParameters(
    presetChanges(bench.parameters, id, presets),
    bench.parameters,
  );
  if (problems.length > 0) return { problems };
  const driveType: DriveType = presets[id]!.driveType;
  return {
    origin: { ...bench.origin, driveType, parameters: { ...bench.origin.parameters, ...changes } },
    preset: id,
    parameters: { ...bench.parameters, ...changes },
  };
}
