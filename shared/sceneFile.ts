import { type CheckedValue, checkNumber, checkParameters, crossChecks } from './check.ts';
import { checkText, LONGEST_TITLE } from './checkText.ts';
import { type Entries, type Failure, openFile } from './jsonFile.ts';
import { findKit, kitParameters } from './kit.ts';
import { migrateParameters } from './migrate.ts';
import { checkMoves } from './moves.ts';
import { defaultParameters, PARAMETER_NAMES, PARAMETERS, type Parameters } from './parameters/table.ts';
import { isRecord, MOST_PROBLEMS, type Problem, shown, unknownName } from './problem.ts';
import { FORMS, type Form, type Kit, type Scene } from './scene.ts';

/**
 * A scene file is JSON, all values SI:
 *
 *     { "waybench": "scene", "version": 2, "title": "…", "lookFor": "…", "kit": "tubular",
 *       "form": "tubular", "parameters": { "payload": 4, … }, "moves": [ … ] }
 *
 * `kit` lays the parameters of a drive, for as many motors as there are, over the defaults; `parameters` lie over both. `form` may be left out where a kit
 * gives it. What is written names no kit and holds every value, so it means the same for ever.
 */
export const SCENE_VERSION = 2;

export type SceneResult = { readonly scene: Scene } | Failure;

/** What entries are laid over: a drive, or a whole scene. */
export type SceneBase = Partial<Scene> & { readonly parameters: Parameters };

const FILE_ENTRIES = ['waybench', 'version', 'title', 'lookFor', 'kit', 'form', 'parameters', 'moves'];
const LONGEST_SENTENCE = 400;

/** Reads the text of a scene file, or its parsed value. Total: a complete legal scene, or what is wrong. */
export function readScene(input: unknown, kits: Readonly<Record<string, Kit>>): SceneResult {
  const opened = openFile(input, 'scene', SCENE_VERSION);
  if ('problems' in opened) return opened;
  const { entries, version } = opened;
  const stray = Object.keys(entries).find((name) => !FILE_ENTRIES.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('an entry of a scene file', stray, FILE_ENTRIES, entries[stray])] };
  }
  const { kit, parameters } = entries;
  const base = kitBase(kit, motorCountOf(parameters), kits);
  if ('problems' in base) return base;
  return layOver({ ...entries, parameters: migrateParameters(parameters, version) }, base);
}

/** Everything resolved: reads back as the same scene, number by number. */
export function writeScene(scene: Scene): string {
  return `${JSON.stringify(sceneEntries(scene), null, 2)}\n`;
}

export function sceneEntries({ title, lookFor, form, parameters, moves }: Scene): Entries {
  return {
    waybench: 'scene',
    version: SCENE_VERSION,
    title,
    lookFor,
    form,
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

function kitBase(id: unknown, motorCount: number, kits: Readonly<Record<string, Kit>>): SceneBase | Failure {
  if (id === undefined) return { parameters: defaultParameters() };
  const kit = findKit(id, kits);
  if ('problems' in kit) return kit;
  return { form: kit.form, parameters: { ...defaultParameters(), ...kitParameters(kit, motorCount) } };
}

/** Checks title, lookFor, form, parameters and moves, as far as given, and lays them over the base. */
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
  const form = take('form', checkForm(given('form', base.form)));
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
    form === undefined ||
    'problems' in moves
  )
    return { problems: problems.slice(0, MOST_PROBLEMS + 1) };
  return { scene: { title, lookFor, form, parameters, moves: moves.moves } };
}

function checkForm(value: unknown): CheckedValue<Form> {
  return FORMS.includes(value as Form)
    ? { legal: value as Form }
    : { wrong: `${shown(value)} is not one of ${FORMS.join(', ')}. Give one of them, or a kit.` };
}
