import { type CheckedValue, checkNumber, checkOption, checkParameters } from '../core/check.ts';
import { checkText, LONGEST_TITLE } from '../core/checkText.ts';
import { checkCoggingTable } from '../core/coggingTable.ts';
import { crossChecks } from '../core/crossChecks.ts';
import { defaultParameters, PARAMETER_NAMES, PARAMETERS, type Parameters } from '../core/parameters/table.ts';
import { findPreset, presetParameters } from '../core/preset.ts';
import {
  entryProblem,
  type Failure,
  isRecord,
  MAX_PROBLEMS,
  type Problem,
  unknownName,
} from '../core/problem.ts';
import { DRIVE_TYPES, type Presets, type Scene, type Shelf } from '../core/scene.ts';
import { MODEL_VERSION } from '../core/version.ts';
import { checkMoves } from '../motion/moves.ts';
import { type Entries, openFile } from './jsonFile.ts';
import { migrateScene, withFormerIdentity } from './migrate.ts';

/**
 * A scene file is JSON, all values SI:
 *
 *     { "waybench": "scene", "version": 3, "model": 1, "id": "mould-shuttle", "basedOn": "tubular",
 *       "title": "…", "lookFor": "…", "driveType": "tubular",
 *       "parameters": { "payload": 4, … }, "moves": [ … ], "coggingTable": { … } }
 *
 * `model` says with which version of the model it was made. Only a scene with a learned table of cogging has a `coggingTable`.
 *
 * `id` and `basedOn` say which scene and which drive of the shelf it began as, and set nothing. What is written
 * holds every value, so it always means the same, even once the drive of that name is another.
 *
 * By hand it is shorter to give `preset` in place of `basedOn` and `driveType`: it lays the parameters of that
 * drive, for as many motors as there are, over the defaults, and `parameters` lie over both.
 */
const SCENE_VERSION = 3;

/** Before it, a scene did not say what it is based on. */
const FIRST_WITH_IDENTITY = 3;

export type SceneResult = { readonly scene: Scene } | Failure;

/** What entries are laid over: a drive, or a whole scene. */
export type SceneBase = Partial<Scene> & { readonly parameters: Parameters };

const FILE_ENTRIES = [
  'waybench',
  'version',
  'id',
  'basedOn',
  'title',
  'lookFor',
  'preset',
  'driveType',
  'parameters',
  'moves',
  'coggingTable',
];
const LONGEST_SENTENCE = 400;

/** Reads the text of a scene file, or its parsed value. Total: a complete legal scene, or what is wrong. */
export function readScene(input: unknown, shelf: Shelf): SceneResult {
  const opened = openFile(input, 'scene', SCENE_VERSION);
  if ('problems' in opened) return opened;
  const entries = migrateScene(opened.entries, opened.version);
  const stray = Object.keys(entries).find((name) => !FILE_ENTRIES.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('an entry of a scene file', stray, FILE_ENTRIES, entries[stray])] };
  }
  const { id, basedOn, preset, parameters } = entries;
  const drive = presetBase(preset, motorCountOf(parameters), shelf.presets);
  if ('problems' in drive) return drive;
  const identity = { id: knownScene(id, shelf), preset: knownPreset(basedOn, shelf.presets) };
  const read = layOver(entries, { ...identity, ...drive });
  if ('problems' in read || opened.version >= FIRST_WITH_IDENTITY) return read;
  return { scene: withFormerIdentity(read.scene, shelf) };
}

/** An id that is not on the shelf says nothing: the values are what counts. */
function knownScene(id: unknown, { scenes }: Shelf): string | null {
  return scenes.find((scene) => scene.id === id)?.id ?? null;
}

export function knownPreset(id: unknown, presets: Presets): string | null {
  return typeof id === 'string' && Object.hasOwn(presets, id) ? id : null;
}

/** Everything resolved: reads back as the same scene, number by number. */
export function writeScene(scene: Scene): string {
  return `${JSON.stringify(sceneEntries(scene), null, 2)}\n`;
}

export function sceneEntries({
  id,
  preset,
  title,
  lookFor,
  driveType,
  parameters,
  moves,
  coggingTable,
}: Scene): Entries {
  return {
    waybench: 'scene',
    version: SCENE_VERSION,
    model: MODEL_VERSION,
    ...(id === null ? {} : { id }),
    ...(preset === null ? {} : { basedOn: preset }),
    title,
    lookFor,
    driveType,
    parameters: Object.fromEntries(PARAMETER_NAMES.map((name) => [name, parameters[name]])),
    moves,
    ...(coggingTable && { coggingTable }),
  };
}

/** Whatever is not a legal number of motors is refused with the other parameters. */
function motorCountOf(parameters: unknown): number {
  const { motorCount: count } = isRecord(parameters) ? parameters : {};
  return typeof count === 'number' && 'legal' in checkNumber(count, PARAMETERS.motorCount)
    ? count
    : PARAMETERS.motorCount.default;
}

function presetBase(id: unknown, motorCount: number, presets: Presets): SceneBase | Failure {
  if (id === undefined) return { parameters: defaultParameters() };
  const preset = findPreset(id, presets);
  if ('problems' in preset) return preset;
  return {
    preset: knownPreset(id, presets),
    driveType: preset.driveType,
    parameters: { ...defaultParameters(), ...presetParameters(preset, motorCount) },
  };
}

/** The table of the entries, checked, or that of the base; undefined: neither has one. */
function coggingTableOf(
  { coggingTable }: Entries,
  base: SceneBase,
): ReturnType<typeof checkCoggingTable> | undefined {
  if (coggingTable !== undefined) return checkCoggingTable(coggingTable);
  return base.coggingTable && { table: base.coggingTable };
}

/** Checks title, lookFor, driveType, parameters, moves and cogging table, as far as given, and lays them over the base. */
export function layOver(entries: Entries, base: SceneBase): SceneResult {
  const problems: Problem[] = [];
  const given = (name: string, otherwise: unknown) =>
    entries[name] === undefined ? otherwise : entries[name];
  const take = <T>(field: string, checked: CheckedValue<T>): T | undefined => {
    if ('legal' in checked) return checked.legal;
    problems.push(entryProblem(field, entries[field], checked.wrong));
    return undefined;
  };

  const title = take('title', checkText(given('title', base.title), LONGEST_TITLE, { mayBeEmpty: false }));
  const lookFor = take(
    'lookFor',
    checkText(given('lookFor', base.lookFor ?? ''), LONGEST_SENTENCE, { mayBeEmpty: true }),
  );
  const driveType = take(
    'driveType',
    checkOption(given('driveType', base.driveType), DRIVE_TYPES, ' Give one of them, or a preset.'),
  );
  const checked = checkParameters(given('parameters', {}), base.parameters);
  problems.push(...checked.problems);
  const parameters = { ...base.parameters, ...checked.changes };
  const moves = checkMoves(given('moves', base.moves ?? []), parameters);
  if ('problems' in moves) problems.push(...moves.problems);
  const cogging = coggingTableOf(entries, base);
  if (cogging && 'problems' in cogging) problems.push(...cogging.problems);
  // Contradictions that the entries do not touch stand in the base.
  if (problems.length === 0) problems.push(...crossChecks(parameters));

  if (
    problems.length > 0 ||
    title === undefined ||
    lookFor === undefined ||
    driveType === undefined ||
    'problems' in moves ||
    (cogging && 'problems' in cogging)
  )
    return { problems: problems.slice(0, MAX_PROBLEMS + 1) };
  const { id = null, preset = null } = base;
  const ofTable = cogging && { coggingTable: cogging.table };
  return { scene: { id, preset, title, lookFor, driveType, parameters, moves: moves.moves, ...ofTable } };
}
