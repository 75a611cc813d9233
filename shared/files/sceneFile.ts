import { type CheckedValue, checkNumber, checkParameters, crossChecks } from '../core/check.ts';
import { checkText, LONGEST_TITLE } from '../core/checkText.ts';
import { defaultParameters, PARAMETER_NAMES, PARAMETERS, type Parameters } from '../core/parameters/table.ts';
import { findPreset, presetParameters } from '../core/preset.ts';
import { type Failure, isRecord, MAX_PROBLEMS, type Problem, shown, unknownName } from '../core/problem.ts';
import { DRIVE_TYPES, type DriveType, type Preset, type Scene } from '../core/scene.ts';
import { checkMoves } from '../motion/moves.ts';
import { type Entries, openFile } from './jsonFile.ts';
import { migrateScene } from './migrate.ts';

/**
 * A scene file is JSON, all values SI:
 *
 *     { "waybench": "scene", "version": 3, "title": "…", "lookFor": "…", "preset": "tubular",
 *       "driveType": "tubular", "parameters": { "payload": 4, … }, "moves": [ … ] }
 *
 * `preset` lays the parameters of a drive, for as many motors as there are, over the defaults; `parameters` lie over both. `driveType` may be left out where a preset
 * gives it. What is written names no preset and holds every value, so it means the same for ever.
 */
export const SCENE_VERSION = 3;

export type SceneResult = { readonly scene: Scene } | Failure;

/** What entries are laid over: a drive, or a whole scene. */
export type SceneBase = Partial<Scene> & { readonly parameters: Parameters };

const FILE_ENTRIES = [
  'waybench',
  'version',
  'title',
  'lookFor',
  'preset',
  'driveType',
  'parameters',
  'moves',
];
const LONGEST_SENTENCE = 400;

/** Reads the text of a scene file, or its parsed value. Total: a complete legal scene, or what is wrong. */
export function readScene(input: unknown, presets: Readonly<Record<string, Preset>>): SceneResult {
  const opened = openFile(input, 'scene', SCENE_VERSION);
  if ('problems' in opened) return opened;
  const entries = migrateScene(opened.entries, opened.version);
  const stray = Object.keys(entries).find((name) => !FILE_ENTRIES.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('an entry of a scene file', stray, FILE_ENTRIES, entries[stray])] };
  }
  const { preset, parameters } = entries;
  const base = presetBase(preset, motorCountOf(parameters), presets);
  if ('problems' in base) return base;
  return layOver(entries, base);
}

/** Everything resolved: reads back as the same scene, number by number. */
export function writeScene(scene: Scene): string {
  return `${JSON.stringify(sceneEntries(scene), null, 2)}\n`;
}

export function sceneEntries({ title, lookFor, driveType, parameters, moves }: Scene): Entries {
  return {
    waybench: 'scene',
    version: SCENE_VERSION,
    title,
    lookFor,
    driveType,
    parameters: Object.fromEntries(PARAMETER_NAMES.map((name) => [name, parameters[name]])),
    moves,
  };
}

/** Whatever is not a legal number of motors is refused with the other parameters. */
function motorCountOf(parameters: unknown): number {
  const { motorCount: count } = isRecord(parameters) ? parameters : {};
  return typeof count === 'number' && 'legal' in checkNumber(count, PARAMETERS.motorCount)
    ? count
    : PARAMETERS.motorCount.default;
}

function presetBase(
  id: unknown,
  motorCount: number,
  presets: Readonly<Record<string, Preset>>,
): SceneBase | Failure {
  if (id === undefined) return { parameters: defaultParameters() };
  const preset = findPreset(id, presets);
  if ('problems' in preset) return preset;
  return {
    driveType: preset.driveType,
    parameters: { ...defaultParameters(), ...presetParameters(preset, motorCount) },
  };
}

/** Checks title, lookFor, driveType, parameters and moves, as far as given, and lays them over the base. */
export function layOver(entries: Entries, base: SceneBase): SceneResult {
  const problems: Problem[] = [];
  const given = (name: string, otherwise: unknown) =>
    entries[name] === undefined ? otherwise : entries[name];
  const take = <T>(field: string, checked: CheckedValue<T>): T | undefined => {
    if ('legal' in checked) return checked.legal;
    problems.push({ field, value: entries[field], message: `${field}: ${checked.wrong}` });
    return undefined;
  };

  const title = take('title', checkText(given('title', base.title), LONGEST_TITLE, { mayBeEmpty: false }));
  const lookFor = take(
    'lookFor',
    checkText(given('lookFor', base.lookFor ?? ''), LONGEST_SENTENCE, { mayBeEmpty: true }),
  );
  const driveType = take('driveType', checkDriveType(given('driveType', base.driveType)));
  const checked = checkParameters(given('parameters', {}), base.parameters);
  problems.push(...checked.problems);
  const parameters = { ...base.parameters, ...checked.changes };
  const moves = checkMoves(given('moves', base.moves ?? []), parameters);
  if ('problems' in moves) problems.push(...moves.problems);
  // Contradictions that the entries do not touch stand in the base.
  if (problems.length === 0) problems.push(...crossChecks(parameters));

  if (
    problems.length > 0 ||
    title === undefined ||
    lookFor === undefined ||
    driveType === undefined ||
    'problems' in moves
  )
    return { problems: problems.slice(0, MAX_PROBLEMS + 1) };
  return { scene: { title, lookFor, driveType, parameters, moves: moves.moves } };
}

function checkDriveType(value: unknown): CheckedValue<DriveType> {
  return DRIVE_TYPES.includes(value as DriveType)
    ? { legal: value as DriveType }
    : { wrong: `${shown(value)} is not one of ${DRIVE_TYPES.join(', ')}. Give one of them, or a preset.` };
}
