import {
  defaultParameters,
  isParameterName,
  PARAMETER_NAMES,
  parameterRow,
} from '../core/parameters/table.ts';
import { didYouMean, type Failure, failure, shown } from '../core/problem.ts';
import type { Scene } from '../core/scene.ts';
import type { Entries } from './jsonFile.ts';
import { openLinkText, type Pair, parseMoves, parseValue, writeLinkText, writeMoves } from './linkText.ts';
import { layOver, type SceneBase, type SceneResult } from './sceneFile.ts';

/**
 * A scene in the fragment of an address:
 *
 *     v=2&scene=mould-shuttle&payload=6.5&notch1=true&sum=1k2j3h4
 *
 * A scene of the shelf, told by its title, is its name and what differs from it; any other scene is written whole, so
 * that it means the same for ever. Values are SI. `sum` tells a damaged or shortened link.
 * Links of version 1 call the drive type `form`.
 */
export const LINK_VERSION = 2;

export interface ShelfScene {
  /** File name of the scene without its ending. */
  readonly name: string;
  readonly scene: Scene;
}

export function writeLink(scene: Scene, shelf: readonly ShelfScene[]): string {
  const home = shelf.find((each) => each.scene.title === scene.title);
  const usual = new Map(home ? sceneValues(home.scene) : []);
  return writeLinkText('v', LINK_VERSION, [
    ...(home ? [['scene', home.name] as const] : []),
    ...sceneValues(scene).filter(([name, value]) => usual.get(name) !== value),
  ]);
}

/** Reads a link with or without its leading #. Total: a complete legal scene, or what is wrong. */
export function readLink(fragment: string, shelf: readonly ShelfScene[]): SceneResult {
  const opened = openLinkText(fragment, 'v', LINK_VERSION);
  if ('problems' in opened) return opened;
  const { scene: name, title, lookFor, form, driveType = form, moves, ...parameters } = opened.values;
  const base = shelfBase(name, shelf);
  if ('problems' in base) return base;
  const entries = {
    title,
    lookFor,
    driveType,
    moves: parseMoves(moves),
    parameters: parseParameters(parameters),
  };
  return layOver(entries, base);
}

/** Every value of a scene as text, each under its own name. */
function sceneValues({ title, lookFor, driveType, parameters, moves }: Scene): Pair[] {
  return [
    ['title', title],
    ['lookFor', lookFor],
    ['driveType', driveType],
    ...PARAMETER_NAMES.map((name): Pair => [name, String(parameters[name])]),
    ['moves', writeMoves(moves)],
  ];
}

function shelfBase(name: string | undefined, shelf: readonly ShelfScene[]): SceneBase | Failure {
  if (name === undefined) return { parameters: defaultParameters() };
  const home = shelf.find((each) => each.name === name);
  if (home) return home.scene;
  const known = shelf.map((each) => each.name);
  return failure(
    'scene',
    name,
    `The link asks for the scene ${shown(name)}, which is not here.${didYouMean(name, known)}`,
  );
}

function parseParameters(values: Readonly<Record<string, string>>): Entries {
  return Object.fromEntries(
    Object.entries(values).map(([name, text]) => [
      name,
      isParameterName(name) ? parseValue(text, parameterRow(name)) : text,
    ]),
  );
}
