import { type Entries, type Failure, failure } from './jsonFile.ts';
import { MOVE_ENTRIES } from './moves.ts';
import { defaultParameters, isParameterName, PARAMETER_NAMES, parameterRow } from './parameters/table.ts';
import { didYouMean, shown } from './problem.ts';
import type { Scene } from './scene.ts';
import { layOver, type SceneBase, type SceneResult } from './sceneFile.ts';

/**
 * A scene in the fragment of an address:
 *
 *     v=1&scene=mould-shuttle&payload=6.5&notch1=true&sum=1k2j3h4
 *
 * A scene of the shelf, told by its title, is its name and what differs from it; any other scene is written whole, so
 * that it means the same for ever. Values are SI. `sum` tells a damaged or shortened link.
 */
export const LINK_VERSION = 1;

const LONGEST_LINK = 100_000;

export interface ShelfScene {
  /** File name of the scene without its ending. */
  readonly name: string;
  readonly scene: Scene;
}

export function writeLink(scene: Scene, shelf: readonly ShelfScene[]): string {
  const home = shelf.find((each) => each.scene.title === scene.title);
  const usual = new Map(home ? sceneValues(home.scene) : []);
  const pairs: Pair[] = [
    ['v', String(LINK_VERSION)],
    ...(home ? [['scene', home.name] as const] : []),
    ...sceneValues(scene).filter(([name, value]) => usual.get(name) !== value),
  ];
  const text = pairs.map(([name, value]) => `${name}=${encodeURIComponent(value)}`).join('&');
  return `${text}&sum=${checksum(text)}`;
}

/** Reads a link with or without its leading #. Total: a complete legal scene, or what is wrong. */
export function readLink(fragment: string, shelf: readonly ShelfScene[]): SceneResult {
  const opened = openLink(fragment.replace(/^#/, ''));
  if ('problems' in opened) return opened;
  const { scene: name, title, lookFor, form, moves, ...parameters } = opened.values;
  const base = shelfBase(name, shelf);
  if ('problems' in base) return base;
  const entries = { title, lookFor, form, moves: parseMoves(moves), parameters: parseParameters(parameters) };
  return layOver(entries, base);
}

type Pair = readonly [name: string, value: string];

/** Every value of a scene as text, each under its own name. */
function sceneValues({ title, lookFor, form, parameters, moves }: Scene): Pair[] {
  return [
    ['title', title],
    ['lookFor', lookFor],
    ['form', form],
    ...PARAMETER_NAMES.map((name): Pair => [name, String(parameters[name])]),
    ['moves', moves.map((line) => MOVE_ENTRIES.map((entry) => line[entry]).join(',')).join(';')],
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

/** The values of a link that arrived as it was written. */
function openLink(text: string): { readonly values: Readonly<Record<string, string>> } | Failure {
  if (text.length > LONGEST_LINK) return failure('', text.length, 'The link is too long to be one of ours.');
  const version = Number(/^v=(\d{1,9})(?=&|$)/.exec(text)?.[1]);
  if (version > LINK_VERSION) {
    return failure(
      'v',
      version,
      `The link is of version ${version}, made by a newer Waybench; this one reads version ${LINK_VERSION}.`,
    );
  }
  const [, body = '', sum] = /^(.*)&sum=([0-9a-z]+)$/s.exec(text) ?? [];
  if (version !== LINK_VERSION || sum !== checksum(body)) {
    return failure('', shown(text), 'The link is damaged or cut short. Copy it again, whole.');
  }
  try {
    return { values: Object.fromEntries(body.split('&').map(readPair)) };
  } catch {
    return failure('', shown(text), 'The link holds characters that are not text. Copy it again.');
  }
}

/** @throws URIError if the value is not percent-encoded text. */
function readPair(pair: string): Pair {
  const [name = '', ...value] = pair.split('=');
  return [name, decodeURIComponent(value.join('='))];
}

function parseParameters({ v: _version, ...values }: Readonly<Record<string, string>>): Entries {
  return Object.fromEntries(Object.entries(values).map(([name, text]) => [name, parseValue(name, text)]));
}

/** The value in the type of its row; text that does not fit is left to the check. */
function parseValue(name: string, text: string): unknown {
  if (!isParameterName(name)) return text;
  const { kind } = parameterRow(name);
  if (kind === 'switch') return text === 'true' ? true : text === 'false' ? false : text;
  return kind === 'number' ? parseNumber(text) : text;
}

function parseNumber(text: string): unknown {
  return /^-?\d+(\.\d+)?(e[-+]\d+)?$/.test(text) ? Number(text) : text;
}

function parseMoves(text: string | undefined): unknown {
  if (text === undefined) return undefined;
  if (text === '') return [];
  return text.split(';').map((line) => {
    const numbers = line.split(',').map(parseNumber);
    return Object.fromEntries(MOVE_ENTRIES.map((name, index) => [name, numbers[index]]));
  });
}

/** FNV-1a over the code units, 32 bits (Fowler, Noll, Vo; from memory): tells damage, keeps no secret. */
function checksum(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}
