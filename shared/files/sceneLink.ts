import {
  defaultParameters,
  isParameterName,
  PARAMETER_NAMES,
  parameterRow,
} from '../core/parameters/table.ts';
import { didYouMean, type Failure, failure, shown } from '../core/problem.ts';
import type { Scene, Shelf } from '../core/scene.ts';
import { parseCoggingTable, writeCoggingTable } from './coggingText.ts';
import { withFiltersOfToday } from './formerFilters.ts';
import type { Entries } from './jsonFile.ts';
import { openLinkText, type Pair, parseMoves, parseValue, writeLinkText, writeMoves } from './linkText.ts';
import { migrateLink, withFormerIdentity } from './migrate.ts';
import { knownPreset, layOver, type SceneBase, type SceneResult } from './sceneFile.ts';

/**
 * A scene in the fragment of an address:
 *
 *     v=2&scene=mould-shuttle&preset=flat&payload=6.5&filter1=notch&…&sum=1k2j3h4
 *
 * A scene of the shelf is its id and what differs from it; any other scene is written whole, so that it always means
 * the same. `preset` says which drive it is based on, and sets nothing; empty, it is based on none. Values are SI.
 * `sum` tells a damaged or shortened link. Links of version 1 call the drive type `form` and know no `preset`.
 */
const LINK_VERSION = 2;

/** Before it, a scene did not say what it is based on. */
const FIRST_WITH_IDENTITY = 2;

export function writeLink(scene: Scene, { scenes }: Shelf): string {
  const home = scenes.find(({ id }) => id === scene.id);
  const usual = new Map(home ? sceneValues(home) : [['preset', '']]);
  return writeLinkText('v', LINK_VERSION, [
    ...(home ? [['scene', home.id ?? ''] as const] : []),
    ...sceneValues(scene).filter(([name, value]) => usual.get(name) !== value),
  ]);
}

/** Reads a link with or without its leading #. Total: a complete legal scene, or what is wrong. */
export function readLink(fragment: string, shelf: Shelf): SceneResult {
  const opened = openLinkText(fragment, 'v', LINK_VERSION);
  if ('problems' in opened) return opened;
  const values = migrateLink(opened.values, opened.version);
  const { scene: id, preset, title, lookFor, driveType, moves, coggingTable, ...parameters } = values;
  const base = shelfBase(id, shelf.scenes);
  if ('problems' in base) return base;
  const entries = {
    title,
    lookFor,
    driveType,
    moves: parseMoves(moves),
    coggingTable: parseCoggingTable(coggingTable),
    parameters: parseParameters(withFiltersOfToday(parameters)),
  };
  if (opened.version < FIRST_WITH_IDENTITY) {
    const read = layOver(entries, { ...base, preset: null });
    return 'problems' in read ? read : { scene: withFormerIdentity(read.scene, shelf) };
  }
  return layOver(
    entries,
    preset === undefined ? base : { ...base, preset: knownPreset(preset, shelf.presets) },
  );
}

/** Every value of a scene as text, each under its own name. */
function sceneValues({ preset, title, lookFor, driveType, parameters, moves, coggingTable }: Scene): Pair[] {
  return [
    ['preset', preset ?? ''],
    ['title', title],
    ['lookFor', lookFor],
    ['driveType', driveType],
    ...PARAMETER_NAMES.map((name): Pair => [name, String(parameters[name])]),
    ['moves', writeMoves(moves)],
    ...(coggingTable ? [['coggingTable', writeCoggingTable(coggingTable)] as const] : []),
  ];
}

function shelfBase(id: string | undefined, scenes: readonly Scene[]): SceneBase | Failure {
  if (id === undefined) return { parameters: defaultParameters() };
  const home = scenes.find((each) => each.id === id);
  if (home) return home;
  const known = scenes.flatMap((each) => each.id ?? []);
  return failure(
    'scene',
    id,
    `The link asks for the scene ${shown(id)}, which does not exist here.${didYouMean(id, known)}`,
  );
}

function parseParameters(values: Readonly<Record<string, unknown>>): Entries {
  return Object.fromEntries(
    Object.entries(values).map(([name, text]) => [
      name,
      isParameterName(name) ? parseValue(String(text), parameterRow(name)) : text,
    ]),
  );
}
