import { present } from '../core/at.ts';
import type { ParameterName } from '../core/parameters/table.ts';
import { isRecord } from '../core/problem.ts';
import type { Preset, Scene, Shelf } from '../core/scene.ts';
import { toSI, type Unit } from '../core/units.ts';
import { withFiltersOfToday } from './formerFilters.ts';
import type { Entries } from './jsonFile.ts';

/**
 * Version 1 of the scene file kept a few parameters in the units of the drawing, with the unit in the name. Everything
 * else has been SI from the beginning and keeps its name.
 */
const VERSION_1: Readonly<Record<string, readonly [name: ParameterName, unit: Unit]>> = {
  strokeMm: ['stroke', 'mm'],
  startMm: ['start', 'mm'],
  speedMmS: ['speed', 'mm/s'],
  scanSpeedMmS: ['scanSpeed', 'mm/s'],
  dwellMs: ['dwell', 'ms'],
  stairStepNm: ['stairStep', 'nm'],
  polePitchMm: ['polePitch', 'mm'],
  leadMm: ['lead', 'mm'],
  backlashUm: ['backlash', 'µm'],
  travelMinMm: ['travelMin', 'mm'],
  travelMaxMm: ['travelMax', 'mm'],
  followingErrorLimitMm: ['followingErrorLimit', 'mm'],
  windowUm: ['window', 'µm'],
};

/** What entries of a scene file and of a candidate were called up to a version of the file. */
const FORMER_SCENE_NAMES = { kit: 'preset', form: 'driveType' };
const FORMER_STUDY_NAMES = { lanes: 'candidates' };
const FORMER_CANDIDATE_NAMES = { kit: 'preset' };
const FORMER_LINK_NAMES = { form: 'driveType' };

/** The entries of a scene file of any version, or of a scene link, under today's names. */
export function migrateScene(entries: Entries, version: number): Entries {
  const { parameters, ...others } = version > 2 ? entries : renamed(entries, FORMER_SCENE_NAMES);
  return parameters === undefined
    ? others
    : { ...others, parameters: migrateParameters(parameters, version) };
}

/** The entries of a study file of any version under today's names. */
export function migrateStudy(entries: Entries, version: number): Entries {
  const study: { candidates?: unknown } = version > 1 ? entries : renamed(entries, FORMER_STUDY_NAMES);
  const { candidates } = study;
  if (!Array.isArray(candidates)) return study;
  return {
    ...study,
    candidates: candidates.map((each) => (isRecord(each) ? candidateOfToday(each, version) : each)),
  };
}

function candidateOfToday(entries: Entries, version: number): Entries {
  const candidate: { gains?: unknown } = version > 1 ? entries : renamed(entries, FORMER_CANDIDATE_NAMES);
  const { gains } = candidate;
  return isRecord(gains) ? { ...candidate, gains: withFiltersOfToday(gains) } : candidate;
}

/** The values of a scene link of any version under today's names. */
export function migrateLink(
  values: Readonly<Record<string, string>>,
  version: number,
): Record<string, string> {
  return version > 1 ? values : renamed(values, FORMER_LINK_NAMES);
}

/** What makes a motor this motor; all else of a drive could be tuned. */
const MOTOR: readonly ParameterName[] = [
  'forceConstant',
  'torqueConstant',
  'resistance',
  'inductance',
  'polePitch',
  'lead',
];

/**
 * Scene files up to version 2 and links of version 1 did not say which scene and which drive they were based on; they
 * were taken for the scene of the same title and the drive with the same motor.
 */
export function withFormerIdentity(scene: Scene, { presets, scenes }: Shelf): Scene {
  const hasItsMotor = (preset: Preset) =>
    preset.driveType === scene.driveType &&
    MOTOR.every(
      (name) => preset.parameters[name] === undefined || preset.parameters[name] === scene.parameters[name],
    );
  const namesake = scenes.find(({ title }) => title === scene.title);
  const [drive] = Object.entries(presets).find(([, preset]) => hasItsMotor(preset)) ?? [];
  return { ...scene, id: scene.id ?? namesake?.id ?? null, preset: scene.preset ?? drive ?? null };
}

/** A former name beside today's one is left as it is, for the check to refuse. */
function renamed<T>(
  entries: Readonly<Record<string, T>>,
  names: Readonly<Record<string, string>>,
): Record<string, T> {
  return Object.fromEntries(
    Object.entries(entries).map(([name, value]) => {
      const today = Object.hasOwn(names, name) ? names[name] : undefined;
      return [today === undefined || Object.hasOwn(entries, today) ? name : today, value];
    }),
  );
}

/**
 * The parameters of a file of any version under today's names, in SI, still unchecked. An old name beside its new
 * one is left as it is, for the check to refuse.
 */
function migrateParameters(parameters: unknown, version: number): unknown {
  if (!isRecord(parameters)) return parameters;
  const named = withFiltersOfToday(parameters);
  if (version > 1) return named;
  return Object.fromEntries(
    Object.entries(named).map(([name, value]) => {
      if (!Object.hasOwn(VERSION_1, name)) return [name, value];
      const [today, unit] = present(VERSION_1[name]);
      if (Object.hasOwn(parameters, today)) return [name, value];
      return [today, typeof value === 'number' ? toSI(value, unit) : value];
    }),
  );
}
