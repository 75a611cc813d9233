import { startGains } from '../../shared/axis/loop/startGains.ts';
import { checkParameters } from '../../shared/core/check.ts';
import { parameterLabel, parameterText } from '../../shared/core/parameters/labels.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
} from '../../shared/core/parameters/table.ts';
import { changedFromPreset, findPreset, presetParameters } from '../../shared/core/preset.ts';
import type { Failure } from '../../shared/core/problem.ts';
import type { Preset, Presets, Scene } from '../../shared/core/scene.ts';
import type { Bench } from './bench.ts';

/**
 * Everything that putting another drive on the bench changes: the drive's parameters, those of any other drive back to
 * their defaults, and start gains for the mass that is moved then.
 */
function presetChanges(parameters: Parameters, preset: Preset, presets: Presets): ParameterChanges {
  const byDefault = defaultParameters();
  const names = Object.values(presets).flatMap((each) => Object.keys(each.parameters) as ParameterName[]);
  const drive = {
    ...Object.fromEntries(names.map((name) => [name, byDefault[name]])),
    ...presetParameters(preset, parameters.motorCount),
  } as ParameterChanges;
  return { ...drive, ...startGains({ ...parameters, ...drive }, preset.crossover) };
}

/** The bench with another drive on it; what the person changed of the job stays, and stays marked as changed. */
export function withPreset(bench: Bench, id: string, presets: Presets): Bench | Failure {
  const preset = findPreset(id, presets);
  if ('problems' in preset) return preset;
  const { changes, problems } = checkParameters(
    presetChanges(bench.parameters, preset, presets),
    bench.parameters,
  );
  if (problems.length > 0) return { problems };
  return {
    origin: {
      ...bench.origin,
      preset: id,
      driveType: preset.driveType,
      parameters: { ...bench.origin.parameters, ...changes },
    },
    parameters: { ...bench.parameters, ...changes },
  };
}

/** What a drive is based on, in one line, and a line for each of its values that is another now. */
interface BasedOn {
  readonly summary: string;
  readonly changes: readonly string[];
}

/** Null for a drive as the shelf has it, and for one that is based on none of the shelf. */
export function basedOn({ preset: id, parameters }: Scene, presets: Presets): BasedOn | null {
  const preset = id === null ? undefined : presets[id];
  if (!preset) return null;
  const names = changedFromPreset(preset, parameters);
  if (names.length === 0) return null;
  const usual = { ...parameters, ...presetParameters(preset, parameters.motorCount) };
  const text = (name: ParameterName, from: Parameters) => parameterText(name, from[name]);
  return {
    summary: `Based on ${preset.title}, ${names.length === 1 ? '1 value' : `${names.length} values`} changed`,
    changes: names.map(
      (name) => `${parameterLabel(name)}: ${text(name, parameters)} instead of ${text(name, usual)}`,
    ),
  };
}
