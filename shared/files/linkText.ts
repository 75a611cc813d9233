import type { Row } from '../core/parameters/row.ts';
import { type Failure, failure, shown } from '../core/problem.ts';
import type { MoveLine } from '../core/scene.ts';
import { MOVE_ENTRIES } from '../motion/moves.ts';
import type { Entries } from './jsonFile.ts';

/** A link of ours is a version, values each under its own name, and a sum that tells a damaged or shortened link. */
const LONGEST_LINK = 100_000;

export type Pair = readonly [name: string, value: string];

/** `key` names the kind of link: `v=1&payload=6.5&sum=1k2j3h4`. */
export function writeLinkText(key: string, version: number, values: readonly Pair[]): string {
  const pairs: readonly Pair[] = [[key, String(version)], ...values];
  const text = pairs.map(([name, value]) => `${name}=${encodeURIComponent(value)}`).join('&');
  return `${text}&sum=${checksum(text)}`;
}

/** The values of a link that arrived as it was written, and the version it was written in. */
export function openLinkText(
  fragment: string,
  key: string,
  newest: number,
): { readonly values: Readonly<Record<string, string>>; readonly version: number } | Failure {
  const text = fragment.replace(/^#/, '');
  if (text.length > LONGEST_LINK)
    return failure('', text.length, 'This link is too long for one of Waybench.');
  const version = Number(new RegExp(`^${key}=(\\d{1,9})(?=&|$)`).exec(text)?.[1]);
  if (version > newest) {
    return failure(
      key,
      version,
      `This link has version ${version} and was made by a newer Waybench. This one reads versions up to ${newest}.`,
    );
  }
  const [, body = '', sum] = /^(.*)&sum=([0-9a-z]+)$/s.exec(text) ?? [];
  if (!(version >= 1) || sum !== checksum(body)) {
    return failure('', shown(text), 'The link is damaged or incomplete. Copy the whole link again.');
  }
  try {
    return { values: Object.fromEntries(body.split('&').slice(1).map(readPair)), version };
  } catch {
    return failure('', shown(text), 'The link contains characters that are not text. Copy it again.');
  }
}

/** @throws URIError if the value is not percent-encoded text. */
function readPair(pair: string): Pair {
  const [name = '', ...value] = pair.split('=');
  return [name, decodeURIComponent(value.join('='))];
}

/** The value in the type of its row; text that does not fit is left to the check. */
export function parseValue(text: string, { kind }: Row): unknown {
  if (kind === 'switch') return text === 'true' ? true : text === 'false' ? false : text;
  return kind === 'number' ? parseNumber(text) : text;
}

export function parseNumber(text: string): unknown {
  return /^-?\d+(\.\d+)?(e[-+]\d+)?$/.test(text) ? Number(text) : text;
}

export function writeMoves(moves: readonly MoveLine[]): string {
  return moves.map((line) => MOVE_ENTRIES.flatMap((entry) => line[entry] ?? []).join(',')).join(';');
}

/** Lines of a move list, still unchecked; undefined where the link has none. */
export function parseMoves(text: string | undefined): Entries[] | undefined {
  if (text === undefined) return undefined;
  if (text === '') return [];
  return text.split(';').map((line) => {
    const numbers = line.split(',').map(parseNumber);
    return Object.fromEntries(
      MOVE_ENTRIES.map((name, index) => [name, numbers[index]] as const).filter(
        ([name, number]) => name !== 'force' || number !== undefined,
      ),
    );
  });
}

/** FNV-1a over the code units, 32 bits (Fowler, Noll, Vo; from memory): tells damage, keeps no secret. */
function checksum(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}
